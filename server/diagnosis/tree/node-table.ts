import { IntTable } from './int-table.ts'

/** The two ends of every diagram: "does not hold" and "holds". */
export const FALSE = 0
export const TRUE = 1

/** Node numbers must fit into the tables' 32 bits with room to spare. */
const NODE_SPACE = 2 ** 26

/** The level of an end: below every fault. */
const END = 2 ** 31 - 1

/**
 * Steps of work for each node that a diagram may have. Trees that can be answered take one to three;
 * without a bound, a tree could be worked on for hours without making a new node.
 */
const STEPS_PER_NODE = 8

/** A diagram would need more nodes than it may have, or more work than goes with that many. */
export class DiagramTooLarge extends Error {
  override readonly name = 'DiagramTooLarge'
  readonly maxNodes: number

  constructor(maxNodes: number) {
    super(`The decision diagram needs more than ${maxNodes} nodes, or the work of so many`)
    this.maxNodes = maxNodes
  }
}

/** What it means that a way through a diagram passes a level without a node there. */
export type Skipped =
  /** The fault makes no difference: a decision diagram. */
  | 'either way'
  /** The fault is not in the set: a diagram of sets. */
  | 'absent'

/**
 * Nodes of a diagram by number, each (level, low, high) stored once, so that equal functions have
 * equal numbers. A node's children always have smaller numbers than the node itself.
 */
export class NodeTable {
  readonly maxNodes: number
  readonly #skipped: Skipped
  readonly #numberOf = new IntTable()
  #levels = new Int32Array(64).fill(END, 0, 2)
  #lows = new Int32Array(64)
  #highs = new Int32Array(64)
  #size = 2
  #stepsLeft: number

  /** @param maxNodes 2 to 2^26, ends included. */
  constructor(maxNodes: number, skipped: Skipped = 'either way') {
    if (!(maxNodes >= 2 && maxNodes <= NODE_SPACE)) {
      throw new RangeError(`maxNodes must be 2 to ${NODE_SPACE}, not ${maxNodes}`)
    }
    this.maxNodes = maxNodes
    this.#skipped = skipped
    this.#stepsLeft = maxNodes * STEPS_PER_NODE
  }

  /** The number of the node with these three, made if it is new. Throws `DiagramTooLarge`. */
  node(level: number, low: number, high: number): number {
    if (high === (this.#skipped === 'absent' ? FALSE : low)) return low
    const known = this.#numberOf.get(level, low, high)
    if (known !== undefined) return known
    const made = this.#size
    if (made >= this.maxNodes) throw new DiagramTooLarge(this.maxNodes)
    if (made === this.#levels.length) {
      this.#levels = grown(this.#levels)
      this.#lows = grown(this.#lows)
      this.#highs = grown(this.#highs)
    }
    this.#levels[made] = level
    this.#lows[made] = low
    this.#highs[made] = high
    this.#size += 1
    this.#numberOf.set(level, low, high, made)
    return made
  }

  /** Counts work that may go on without new nodes. Throws `DiagramTooLarge` where it is too much. */
  spend(steps: number): void {
    this.#stepsLeft -= steps
    if (this.#stepsLeft < 0) throw new DiagramTooLarge(this.maxNodes)
  }

  /** Place of the node's fault in the order, 0 at the top; ends lie below every fault. */
  level(node: number): number {
    return this.#levels[node]!
  }

  /** Where to go on when the node's fault is absent. */
  low(node: number): number {
    return this.#lows[node]!
  }

  /** Where to go on when the node's fault is present. */
  high(node: number): number {
    return this.#highs[node]!
  }

  /** `low` as seen from a level at or above the node's own. */
  lowFrom(node: number, level: number): number {
    return this.#levels[node] === level ? this.#lows[node]! : node
  }

  /** `high` as seen from a level at or above the node's own. */
  highFrom(node: number, level: number): number {
    if (this.#levels[node] === level) return this.#highs[node]!
    return this.#skipped === 'absent' ? FALSE : node
  }
}

/** A copy of twice the length. */
function grown(numbers: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(numbers.length * 2)
  copy.set(numbers)
  return copy
}
