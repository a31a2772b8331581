import { named } from '../../diagnosis/model/named.ts'
import type { Prospect } from '../../diagnosis/model/walk.ts'
import { faultsBelow, type Gate, inputsNeeded } from '../../diagnosis/tree/fault-tree.ts'
import { type DrawnBranch, treeDrawing } from '../../drawings/tree-drawing.ts'
import type { Standing } from '../standing/standing.ts'
import { fellBy } from '../words/branch-words.ts'
import { readingInShort } from '../words/reading-words.ts'
import { percent, upperFirst } from '../words/sentences.ts'
import { isLive } from './live.ts'

/**
 * The fault tree as a drawing: where the probability sits, what is cleared and by which reading, and
 * where the check on the page decides. The live path stays open; the words beside it hold all branches.
 *
 * @param foreseen what each answer to the check on the page would do; none where the verdict stands alone
 */
export function presentTreeDrawing(input: Standing, foreseen: readonly Prospect[]): string {
  const { kase } = input
  const { top } = kase.model.tree
  const { cleared } = named(input.walk.branches, top)
  const isOpen = (name: string) => isLive(input, name) || (name === top && !cleared)
  const label = `Drawing of the fault tree: ${kase.complaint.title}. The whole tree in words stands below it.`
  return treeDrawing(branch(input, top, { isOpen, decided: decidedBy(foreseen) }), label)
}

/** The same before any reading, with nothing folded. */
export function presentWholeTree(
  { kase, walk }: Pick<Standing, 'kase' | 'walk'>,
  foreseen: readonly Prospect[],
): string {
  const way = { isOpen: () => true, decided: decidedBy(foreseen) }
  const top = branch({ kase, walk, judged: new Map(), evidence: [] }, kase.model.tree.top, way)
  return treeDrawing(top, `Drawing of the whole fault tree: ${kase.complaint.title}.`)
}

/** What is folded, and where the check on the page decides. */
interface Drawing {
  readonly isOpen: (name: string) => boolean
  readonly decided: ReadonlySet<string>
}

type Drawn = Pick<Standing, 'kase' | 'walk' | 'judged' | 'evidence'>

/** What some answer to the check would clear, or name. */
function decidedBy(foreseen: readonly Prospect[]): ReadonlySet<string> {
  const parts = foreseen.flatMap(({ names }) => (names === undefined ? [] : [`part:${names}`]))
  return new Set([...foreseen.flatMap(({ clears }) => clears), ...parts])
}

function branch(input: Drawn, name: string, way: Drawing): DrawnBranch {
  const { kase, walk } = input
  const { tree } = kase.model
  const gate = tree.gates.get(name)
  const { says } = kase.gates.get(name) ?? named(kase.faults, name)
  const { now, cleared, clearedBy } = named(walk.branches, name)
  const open = way.isOpen(name)
  return {
    says: upperFirst(says),
    ...(gate && { gate: functionOf(gate) }),
    probability: now,
    percent: percent(now),
    cleared,
    ...(clearedBy !== undefined && {
      note: `${fellBy(input, name, clearedBy)}: ${readInShort(input, clearedBy)}`,
    }),
    asked: way.decided.has(name),
    below: open ? (gate?.inputs ?? []).map((each) => branch(input, each, way)) : [],
    folded: open || !gate ? 0 : faultsBelow(tree, name).length,
  }
}

function functionOf(gate: Gate): number | 'all' {
  return gate.kind === 'and' ? 'all' : inputsNeeded(gate)
}

function readInShort({ kase, judged }: Drawn, check: string): string {
  return readingInShort(kase, named(kase.checks, check), named(judged, check))
}
