import type { Prospect } from '../../diagnosis/model/walk.ts'
import { faultsBelow, type Gate } from '../../diagnosis/tree/fault-tree.ts'
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
  return treeDrawing(top, `Drawing of the fault tree: ${kase.complaint.title}`)
}

/** What some answer to the check would clear, or name. */
function decidedBy(foreseen: readonly Prospect[]): ReadonlySet<string> {
  const named = foreseen.flatMap(({ names }) => (names === undefined ? [] : [`part:${names}`]))
  return new Set([...foreseen.flatMap(({ clears }) => clears), ...named])
}

function branch(input: Standing, name: string, decided: ReadonlySet<string>): DrawnBranch {
  const { kase, walk } = input
  const { tree } = kase.model
  const gate = tree.gates.get(name)
  const card = kase.gates.get(name)
  const { now, cleared } = walk.branches.get(name)!
  const open = isLive(input, name) || (name === tree.top && !cleared)
  return {
    says: upperFirst(card ? card.says : kase.faults.get(name)!.says),
    ...(gate && { gate: functionOf(gate) }),
    probability: now,
    percent: percent(now),
    cleared,
    ...(cleared && { note: clearedNote(input, name) }),
    asked: decided.has(name),
    below: open ? (gate?.inputs ?? []).map((each) => branch(input, each, decided)) : [],
    folded: open || !gate ? 0 : faultsBelow(tree, name).length,
  }
}

function functionOf({ kind, k }: Gate): number | 'all' {
  if (kind === 'and') return 'all'
  return kind === 'or' ? 1 : k!
}

function clearedNote({ kase, judged, walk }: Standing, name: string): string {
  const check = walk.branches.get(name)!.clearedBy!
  return readingInShort(kase, kase.checks.get(check)!, judged.get(check)!)
}
