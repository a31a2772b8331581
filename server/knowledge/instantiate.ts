import { apart } from '../diagnosis/model/chances.ts'
import type { Check, Setup } from '../diagnosis/model/model.ts'
import { named } from '../diagnosis/model/named.ts'
import {
  type FaultTree,
  faultsBelow,
  type Holding,
  holdingIn,
} from '../diagnosis/tree/fault-tree.ts'
import type { Case, CheckCard, PartCard, SetupCard } from './case.ts'
import { fits } from './fits.ts'
import { checkCard } from './instantiate/card/check-card.ts'
import { outcomesOf } from './instantiate/card/measured.ts'
import { cautionCards } from './instantiate/caution-cards.ts'
import { unsteady } from './instantiate/chances/doubt.ts'
import { type RowOf, rowOf } from './instantiate/chances/rows.ts'
import { slipsOf } from './instantiate/chances/slips.ts'
import { checksOfKind } from './instantiate/checks-of-kind.ts'
import { cutSetList } from './instantiate/cut-set-list.ts'
import type { PlannedCheck } from './instantiate/planned-check.ts'
import { wrongMinutes } from './instantiate/prices.ts'
import { ownMinutes } from './instantiate/setup-cards.ts'
import { type DrawnTree, drawTree } from './instantiate/tree.ts'
import { onlyOutput } from './instantiate/where/outputs.ts'
import { choicesOf } from './instantiate/where/which.ts'
import { fill, filledProof, fillingsOf } from './instantiate/words.ts'
import type { Knowledge } from './knowledge.ts'
import type { Complaint, Machine } from './schema/index.ts'

/** A check as drawn out for one machine, and how its outcomes depend on faults. */
export interface DrawnCheck {
  readonly planned: PlannedCheck
  readonly rowOf: RowOf
}

const cases = new WeakMap<Knowledge, Map<string, Case>>()

/**
 * The case of a complaint on a machine. Made once and kept: it never changes while the knowledge stays.
 *
 * @throws RangeError if there is no such machine or complaint, or the complaint does not fit.
 */
export function caseFor(knowledge: Knowledge, machineId: string, complaintId: string): Case {
  const kept = cases.get(knowledge) ?? new Map<string, Case>()
  cases.set(knowledge, kept)
  const name = `${machineId} ${complaintId}`
  const known = kept.get(name)
  if (known !== undefined) return known

  const machine = knowledge.machines.get(machineId)
  const complaint = knowledge.complaints.get(complaintId)
  if (!machine || !complaint || !fits(complaint, machine)) {
    throw new RangeError(`no complaint ${complaintId} on a machine ${machineId}`)
  }
  const made = instantiate(knowledge, complaint, machine)
  kept.set(name, made)
  return made
}

/** Draws a complaint out on a machine's sheet. */
export function instantiate(knowledge: Knowledge, complaint: Complaint, machine: Machine): Case {
  const drawn = drawTree(knowledge, complaint, machine)
  const tree = treeBelow(complaint.top, drawn)
  const { share, holds } = complaint.elsewhere
  const places = holds === undefined ? [] : choicesOf(holds, drawn).map(({ output }) => output)
  const { cutSets, leftOut } = cutSetList(tree, drawn.faultCards, share, places)
  const checks = drawChecks(knowledge, complaint, machine, drawn)
    .map(({ planned, rowOf }) => ({
      planned,
      chances: cutSets.map(({ faults, at }) => rowOf(faults, at)),
    }))
    .filter(({ chances }) => tellsAnything(chances))
    .map(({ planned, chances }) => {
      const card = checkCard(planned, knowledge, machine)
      const slips = slipsOf(planned, card.outcomes, machine)
      if (slips === undefined) return { card, check: checkOf(card, chances) }
      const hand = unsteady(slips)
      const look = alikeOf(planned)
      const read = checkOf(card, chances.map(hand.read))
      return { card, check: { ...read, slips: hand.slips, ...(look && { alike: look }) } }
    })
  return {
    machine,
    complaint: worded(complaint, machine),
    model: {
      tree,
      cutSets,
      checks: checks.map(({ check }) => check),
      wrongMinutes: wrongMinutes(knowledge, machine),
    },
    leftOut,
    gates: drawn.gateCards,
    faults: drawn.faultCards,
    parts: partCards(knowledge, machine),
    checks: new Map(checks.map(({ card }) => [card.id, card])),
    ways: faultsAround(complaint.home.try, drawn, knowledge),
    noWays: faultsAround(complaint.home.unless ?? {}, drawn, knowledge),
  }
}

/** The faults below the gates that each way home is named with, in every copy of those. */
function faultsAround(
  named: Complaint['home']['try'],
  { copies, gates }: DrawnTree,
  { home: { ways } }: Knowledge,
): Case['ways'] {
  const below = (gate: string) =>
    (copies.get(gate) ?? []).flatMap(({ name }) => faultsBelow({ top: name, gates }, name))
  return new Map(
    Object.entries(named).map(([way, around]) => {
      const { modes } = ways[way] ?? {}
      const isMeant = (fault: string) => !modes || modes.some((mode) => fault.endsWith(`.${mode}`))
      return [way, [...new Set(around.flatMap(below))].filter(isMeant)]
    }),
  )
}

/** The complaint in the words of this machine. */
function worded(complaint: Complaint, machine: Machine): Complaint {
  const fillings = fillingsOf(machine)
  const { prove, elsewhere } = complaint
  return {
    ...complaint,
    prove: filledProof(prove, fillings),
    elsewhere: { ...elsewhere, says: fill(elsewhere.says, fillings) },
  }
}

/** Every check that the kinds make for this complaint on this machine, whether it tells anything or not. */
export function drawChecks(
  knowledge: Knowledge,
  complaint: Complaint,
  machine: Machine,
  tree: DrawnTree,
): DrawnCheck[] {
  const holding = onceEach(holdingIn(tree))
  const setting = { complaint, machine, tree, holding, partKinds: knowledge.partKinds }
  return [...knowledge.checkKinds.values()]
    .flatMap((kind) => checksOfKind(kind, setting))
    .map((planned) => ({
      planned,
      rowOf: rowOf(planned, outcomesOf(planned, knowledge, machine), setting),
    }))
}

/** Every check asks what holds under each of the same cut sets. */
function onceEach(holding: Holding): Holding {
  const known = new Map<string, ReadonlySet<string>>()
  return (present) => {
    const faults = [...present]
    const name = faults.join()
    const held = known.get(name) ?? holding(faults)
    known.set(name, held)
    return held
  }
}

function treeBelow(top: string, drawn: DrawnTree): FaultTree {
  const gates = new Map<string, NonNullable<ReturnType<typeof drawn.gates.get>>>()
  const visit = (name: string): void => {
    const gate = drawn.gates.get(name)
    if (gate === undefined || gates.has(name)) return
    gates.set(name, gate)
    gate.inputs.forEach(visit)
  }
  visit(top)
  return { top, gates }
}

/** One thing is looked at at every output where faults show in ways of their own: a spark, strong or weak. */
function alikeOf({ kind: { about, answers = [] } }: PlannedCheck): string | undefined {
  if (about.kind !== 'gate' || about.shows === undefined) return undefined
  return [about.shows, ...answers.map(({ id }) => id)].join(' ')
}

/** What does not outlast a check is paid with it, way back and all. */
function checkOf(card: CheckCard, chances: Check['chances']): Check {
  return {
    id: card.id,
    minutes: ownMinutes(card),
    ...(card.waits && { waits: card.waits }),
    setups: card.setups.filter(({ once }) => !once).map(setupOf),
    forbids: card.forbids.map(setupOf),
    effort: effortOf(card),
    ...(card.cools && { cools: true }),
    outcomes: card.outcomes,
    chances,
  }
}

/** A question, a look, a hand, a meter. */
function effortOf({ asked, engine, tools, setups, meter }: CheckCard): number {
  if (asked) return 0
  if (meter !== undefined) return 3
  return engine === 'stopped' && tools.length === 0 && setups.length === 0 ? 1 : 2
}

function setupOf({ id, minutes, undo, lasts }: SetupCard): Setup {
  return { id, minutes, undo: undo?.minutes ?? 0, ...(lasts && { lasts: lasts.minutes }) }
}

/** A check with the same chances under every cut set is about some other complaint. */
function tellsAnything(chances: Check['chances']): boolean {
  const [first, ...others] = new Set(chances)
  return first !== undefined && others.some((row) => apart(row, first) > 0)
}

/** What is said of each part of a machine, by name. */
export function partCards(knowledge: Knowledge, machine: Machine): Map<string, PartCard> {
  return new Map(
    machine.parts.map((part) => {
      const kind = named(knowledge.partKinds, part.kind)
      const fillings = { ...fillingsOf(machine, onlyOutput(part)), part: part.name }
      const card = {
        id: part.id,
        name: part.name,
        repair: fill(kind.repair, fillings),
        prove: filledProof(kind.prove, fillings),
        cautions: cautionCards(kind.cautions ?? [], knowledge, machine),
      }
      return [part.id, part.where === undefined ? card : { ...card, where: part.where }]
    }),
  )
}
