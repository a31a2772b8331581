/** The two ends of every diagram: "does not hold" and "holds". */
export const FALSE = 0
export const TRUE = 1

/** Two node numbers fit side by side in one safe integer (2^52) as long as each stays below this. */
const NODE_SPACE = 2 ** 26

/** The level of an end: below every fault. */
const END = Number.MAX_SAFE_INTEGER

/** A diagram would need more nodes than it may have. */
export class DiagramTooLarge extends Error {
  override readonly name = 'DiagramTooLarge'
  readonly maxNodes: number

  constructor(maxNodes: number) {
    super(`The decision diagram needs more than ${maxNodes} nodes`)
    this.maxNodes = maxNodes
  }
}

/** One key for an ordered pair of node numbers. */
export function pairKey(first: number, second: number): number {
  return first * NODE_SPACE + second
}

/**
 * Nodes of a diagram by number, each (level, low, high) stored once, so that equal functions have
 * equal numbers. A node's children always have smaller numbers than the node itself.
 */
export class NodeTable {
  readonly maxNodes: number
  readonly #levels: number[] = [END, END]
  readonly #lows: number[] = [FALSE, TRUE]
  readonly #highs: number[] = [FALSE, TRUE]
  readonly #numberOf: Map<number, number>[] = []

  /** @param maxNodes 2 to 2^26, ends included. */
  constructor(maxNodes: number) {
    if (!(maxNodes >= 2 && maxNodes <= NODE_SPACE)) {
      throw new RangeError(`maxNodes must be 2 to ${NODE_SPACE}, not ${maxNodes}`)
    }
    this.maxNodes = maxNodes
  }

  /** The number of the node with these three, made if it is new. Throws `DiagramTooLarge`. */
  node(level: number, low: number, high: number): number {
    this.#numberOf[level] ??= new Map()
    const ofLevel = this.#numberOf[level]
    const key = pairKey(low, high)
    const known = ofLevel.get(key)
    if (known !== undefined) return known
    const made = this.#levels.length
    if (made >= this.maxNodes) throw new DiagramTooLarge(this.maxNodes)
    this.#levels.push(level)
    this.#lows.push(low)
    this.#highs.push(high)
    ofLevel.set(key, made)
    return made
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
}
