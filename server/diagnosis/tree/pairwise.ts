import { IntTable } from './int-table.ts'
import type { NodeTable } from './node-table.ts'

/** A function of two nodes that is worked out branch by branch: f(x, y) from f(low, low), f(high, high). */
export interface PairRule {
  /** Where the first node of a pair, the second and the answer live. */
  readonly first: NodeTable
  readonly second: NodeTable
  readonly into: NodeTable
  /** The answer where it is plain without looking at branches. Must be given where both are ends. */
  readonly atOnce: (x: number, y: number) => number | undefined
}

/**
 * The function that a rule describes. Every pair is worked out once and remembered, and counted as a
 * step of work. What is still open waits in a list of its own: a tree with ten thousand faults is deeper
 * than the call stack. The function throws `DiagramTooLarge`.
 */
export function pairwise(rule: PairRule): (x: number, y: number) => number {
  const { first, second, into, atOnce } = rule
  const known = new IntTable()
  const open: number[] = []

  const answer = (x: number, y: number): number | undefined => {
    const plain = atOnce(x, y)
    return plain === undefined ? known.get(x, y, 0) : plain
  }

  /** Answers the pair on top of the open ones, or puts one on top that it waits for. */
  const advance = (): void => {
    const x = open.at(-2)!
    const y = open.at(-1)!
    const level = Math.min(first.level(x), second.level(y))
    const [lowX, lowY] = [first.lowFrom(x, level), second.lowFrom(y, level)]
    const low = answer(lowX, lowY)
    if (low === undefined) {
      open.push(lowX, lowY)
      return
    }
    const [highX, highY] = [first.highFrom(x, level), second.highFrom(y, level)]
    const high = answer(highX, highY)
    if (high === undefined) {
      open.push(highX, highY)
      return
    }
    open.length -= 2
    into.spend(1)
    known.set(x, y, 0, into.node(level, low, high))
  }

  return (x, y) => {
    const before = answer(x, y)
    if (before !== undefined) return before
    open.push(x, y)
    while (open.length > 0) advance()
    return answer(x, y)!
  }
}
