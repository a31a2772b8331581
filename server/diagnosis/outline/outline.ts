import type { Evidence } from '../model/model.ts'
import type { Step, Suspect, Walk } from '../model/walk.ts'

/** A walk drawn ahead for the likeliest explanations: only the checks that part them, and what makes each end sure. */
export interface Outline {
  /** Before any reading. */
  readonly start: Walk
  readonly first: Stage
  readonly shares: Shares
  /** The single faults and "nothing in this tree", by their place in the model, that were followed: by falling prior. */
  readonly followed: readonly Followed[]
  /** Those that were not, by falling prior. */
  readonly left: readonly number[]
}

/** Shares of the single faults and "nothing in this tree", by prior: they sum to 1. */
export interface Shares extends Readonly<Record<HowItEnds, number>> {
  /** Not followed. */
  readonly left: number
}

/**
 * Under its own name; in a stated group with it; outside the tree, where nothing in it is true; or under another name
 * or in a contradiction.
 */
export type HowItEnds = 'named' | 'grouped' | 'outside' | 'astray'

export interface Followed {
  readonly explanation: number
  readonly ends: HowItEnds
}

export type Stage = Split | Ending

/** A check, and where its answers lead; any other answer leads off the outline. */
export interface Split {
  readonly kind: 'split'
  readonly check: string
  readonly answers: readonly { readonly outcome: number; readonly next: Stage }[]
}

/** Where explanations end. */
export interface Ending {
  readonly kind: 'ending'
  readonly end: Exclude<Step, { kind: 'ask' }>
  readonly explanations: readonly number[]
  /** Of the checks that all followed explanations here answer alike, those that make it sure, the most telling first. */
  readonly sure: readonly Answered[]
  /** Probability of what it ends in by the answers on the way, and once the checks that make it sure came out so. */
  readonly before: number
  readonly after: number
  /** After them; the most probable first. */
  readonly suspects: readonly Suspect[]
}

/** A check and the index of its outcome; of one made once more, the same outcome again. */
export interface Answered {
  readonly check: string
  readonly outcome: number
}

export interface OutlineOptions {
  /** Checks that cannot be made after these readings: not at hand, or not safe yet. */
  readonly impossible: (evidence: readonly Evidence[]) => ReadonlySet<string>
  /** Checks that stand on the outline wherever the walk makes them, whether they part anything or not. */
  readonly always: ReadonlySet<string>
  /** Share that is to end under its own name, 0 to 1. */
  readonly enough: number
  /** Probability from which an end is sure enough, 0 to 1. */
  readonly sureFrom: number
}
