import { named } from '../../diagnosis/model/named.ts'
import type { Prospect } from '../../diagnosis/model/walk.ts'
import { faultsBelow, type Gate, inputsNeeded } from '../../diagnosis/tree/fault-tree.ts'
import { type DrawnBranch, treeDrawing } from '../../drawings/tree-drawing.ts'
import type { Standing } from '../standing/standing.ts'
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
  const top = branch(input, kase.model.tree.top, decidedBy(foreseen))
  return treeDrawing(
    top,
    `Drawing of the fault tree: ${kase.complaint.title}. The whole tree in words stands below it.`,
  )
}

/** What some answer to the check would clear, or name. */
function decidedBy(foreseen: readonly Prospect[]): ReadonlySet<string> {
  const parts = foreseen.flatMap(({ names }) => (names === undefined ? [] : [`part:${names}`]))
  return new Set([...foreseen.flatMap(({ clears }) => clears), ...parts])
}

function branch(input: Standing, name: string, decided: ReadonlySet<string>): DrawnBranch {
  const { kase, walk } = input
  const { tree } = kase.model
  const gate = tree.gates.get(name)
  const { says } = kase.gates.get(name) ?? named(kase.faults, name)
  const { now, cleared, clearedBy } = named(walk.branches, name)
  const open = isLive(input, name) || (name === tree.top && !cleared)
  return {
    says: upperFirst(says),
    ...(gate && { gate: functionOf(gate) }),
    probability: now,
    percent: percent(now),
    cleared,
    ...(clearedBy !== undefined && { note: `cleared: ${readInShort(input, clearedBy)}` }),
    asked: decided.has(name),
    below: open ? (gate?.inputs ?? []).map((each) => branch(input, each, decided)) : [],
    folded: open || !gate ? 0 : faultsBelow(tree, name).length,
  }
}

function functionOf(gate: Gate): number | 'all' {
  return gate.kind === 'and' ? 'all' : inputsNeeded(gate)
}

function readInShort({ kase, judged }: Standing, check: string): string {
  return readingInShort(kase, named(kase.checks, check), named(judged, check))
}
