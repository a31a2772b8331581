import { type Quantities, quantities as shipped } from '../measure/reading/quantities.ts'
import { withBothMeasures } from './before-top.ts'
import type { Knowledge, Locate } from './knowledge.ts'
import { lint } from './lint/index.ts'
import { KnowledgeProblems } from './problems.ts'
import {
  Cautions,
  CheckKind,
  Circuit,
  Colours,
  Complaint,
  Glossary,
  Groups,
  Home,
  Machine,
  Meter,
  Owner,
  Roles,
  Setups,
  Tools,
} from './schema/index.ts'
import { partKindOf } from './schema/part-kind.ts'
import { Shelf } from './shelf.ts'
import { readYaml } from './yaml-file.ts'

/**
 * Reads all knowledge below a folder, checks its shape and then its meaning. After this the rest of
 * the program may trust it.
 *
 * @param quantities the kinds of reading that parts may have; those that ship unless told otherwise
 * @param read how one file is read; for whoever reads much the same files again and again
 * @throws KnowledgeProblems if anything is wrong, with all that is wrong.
 */
export function loadKnowledge(
  folder: string,
  quantities: Quantities = shipped,
  read: typeof readYaml = readYaml,
): Knowledge {
  return soundTrees(folder, quantities, read).knowledge
}

/** Knowledge with the place of each thing in it, for whoever has something to say of it. */
export interface Trees {
  readonly knowledge: Knowledge
  readonly locate: Locate
}

/** As `loadKnowledge`, with the places: they keep the text of all files. */
export function soundTrees(
  folder: string,
  quantities: Quantities = shipped,
  read: typeof readYaml = readYaml,
): Trees {
  const trees = readTrees(folder, quantities, read)
  const problems = lint(trees.knowledge, trees.locate)
  if (problems.length > 0) throw new KnowledgeProblems(problems)
  return trees
}

/** The same, but only its shape is checked: what it means may be wrong. */
export function readTrees(
  folder: string,
  quantities: Quantities,
  read: typeof readYaml = readYaml,
): Trees {
  const shelf = new Shelf(folder, read)
  const complaints = shelf.entries('complaints', Complaint, (entry) => entry.id)
  const partKinds = shelf.entries(
    'parts',
    partKindOf(Object.keys(quantities)),
    (entry) => entry.kind,
  )
  const checkKinds = shelf.entries('checks', CheckKind, (entry) => entry.id)
  // A shop that has taken the demo away has no sheet yet.
  const machines = shelf.anyEntries('machines', Machine, (entry) => entry.id)
  const circuits = shelf.anyEntries('circuits', Circuit, (entry) => entry.id)
  const meters = shelf.entries('meters', Meter, (entry) => entry.id)
  const tools = shelf.table('tools.yaml', Tools)
  const setups = shelf.table('setups.yaml', Setups)
  const cautions = shelf.table('cautions.yaml', Cautions)
  const colours = shelf.table('colours.yaml', Colours)
  const groups = shelf.table('groups.yaml', Groups)
  const roles = shelf.table('roles.yaml', Roles)
  const glossary = shelf.table('glossary.yaml', Glossary)
  const owner = shelf.table('owner.yaml', Owner)
  const home = shelf.table('home.yaml', Home)
  if (
    shelf.problems.length > 0 ||
    !tools ||
    !setups ||
    !cautions ||
    !colours ||
    !groups ||
    !roles ||
    !glossary ||
    !owner ||
    !home
  ) {
    throw new KnowledgeProblems(shelf.problems)
  }

  for (const [id, machine] of machines) {
    const whole = withBothMeasures(machine, { partKinds, quantities })
    shelf.standsFor(machine, whole)
    machines.set(id, whole)
  }
  const knowledge: Knowledge = {
    quantities,
    complaints,
    partKinds,
    checkKinds,
    machines,
    circuits,
    meters,
    tools,
    setups,
    cautions,
    colours,
    groups,
    roles,
    glossary,
    owner,
    home,
  }
  return { knowledge, locate: shelf.locate }
}
