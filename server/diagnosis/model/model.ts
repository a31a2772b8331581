import type { FaultTree } from '../tree/fault-tree.ts'

/**
 * What one complaint on one machine comes down to, ready to be weighed.
 * Plain data: built by `knowledge/`, only read here.
 */
export interface Model {
  readonly tree: FaultTree
  readonly cutSets: readonly CutSet[]
  readonly checks: readonly Check[]
  /**
   * By part: minutes lost when it is fitted and was not the cause, its price turned into minutes of
   * labour; 0 or more. Left out: nothing is known of prices, and verdicts go by a fixed threshold.
   */
  readonly wrongMinutes?: ReadonlyMap<string, number>
  /**
   * Share of its own minutes, 0 to 1, that an easier check has to win back before it may come first among near equals.
   * Left out: none.
   */
  readonly earns?: number
}

/** A smallest set of faults that explains the complaint (IEC 61025 minimal cut set). */
export interface CutSet {
  /** Faults of the tree. Empty for the entries that stand for "nothing in this tree": one, or one a place. */
  readonly faults: readonly string[]
  /** Of such an entry: the place that it takes, where there are several. */
  readonly at?: string
  /** The parts those faults belong to, each once, sorted. */
  readonly parts: readonly string[]
  /** Weight before any reading, 0 to 1; over all cut sets they sum to 1. */
  readonly prior: number
}

/** One thing about the machine that a check may need or forbid: a plug apart, a cover off, a tester fitted. */
export interface Setup {
  readonly id: string
  /** Minutes to make it so, 0 or more. */
  readonly minutes: number
  /** Minutes to put it back, 0 or more. */
  readonly undo: number
  /** Minutes of work after which it has gone by itself, as heat does, above 0. Left out: it stays until it is put back. */
  readonly lasts?: number
}

/** One thing to do and look at (IEEE 1232 test). */
export interface Check {
  readonly id: string
  /** Minutes for the check itself, without its set-ups; above 0. */
  readonly minutes: number
  /** Minutes of these that it only waits, once it has been read: what goes by itself may be gone by then. Left out: 0. */
  readonly waits?: number
  /** What has to be so while it is made. */
  readonly setups: readonly Setup[]
  /** What may not be so, last made first. Left out: nothing is in its way. */
  readonly forbids?: readonly Setup[]
  /** What it asks of the person; of checks that come to nearly the same, the lowest comes first. Left out: 0. */
  readonly effort?: number
  /** What goes by itself is gone once it is made. Left out: as long as it lasts, it stays. */
  readonly cools?: boolean
  readonly outcomes: readonly string[]
  /** `chances[c][o]`: chance of outcome o if cut set c is the true one. Each row sums to 1. */
  readonly chances: readonly (readonly number[])[]
  /**
   * `blur[o][j]`: how much of the verdict falls on outcome j, on average, when o is true, because the
   * meter at hand cannot tell the two quite apart. Used to foresee, not to judge. Left out: none.
   */
  readonly blur?: readonly (readonly number[])[]
  /**
   * `slips[s][o]`: chance that one take comes out as o where the part itself would give s, by poor
   * contact or a slip of the hand, which the next take need not repeat. Each row sums to 1. Left out:
   * asked once more, it would say the same again.
   */
  readonly slips?: readonly (readonly number[])[]
  /**
   * Checks with the same name here look at one thing at several places. A cause that gives them the same row
   * shows the same at each, and the second reading says little that the first has not. Needs `slips`.
   */
  readonly alike?: string
}

/** What a reading says about its check's outcomes: the probability of each, given the reading. */
export interface Evidence {
  readonly check: string
  /** As long as the check's outcomes, each 0 to 1. All zero never happens. */
  readonly likelihoods: readonly number[]
  /** What came back each time the check was made once more: indices of outcomes. Needs `slips`. */
  readonly furtherTakes?: readonly number[]
  /** What it was made under that nobody knows; `likelihoods` are then the mean over it. */
  readonly shared?: Shared
}

/**
 * Something that nobody measured and that other readings were made under, too, such as how fast somebody
 * pulls: the likelihoods of a reading at each value that it may have, all as likely beforehand.
 */
export interface Shared {
  /** Readings with the same name here share it, and give the same values in the same order. */
  readonly of: string
  readonly likelihoods: readonly (readonly number[])[]
}
