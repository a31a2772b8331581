import type { Evidence } from './model.ts'
import type { Stands } from './stands.ts'

/** Where a job stands after its readings: everything a page needs, folded anew each time. */
export interface Walk {
  readonly step: Step
  /** Probability of each cut set, in the model's order. */
  readonly belief: readonly number[]
  /** Parts by falling probability that they have failed; `null` stands for "nothing in this tree". */
  readonly suspects: readonly Suspect[]
  /** Every gate and fault of the tree, by name. */
  readonly branches: ReadonlyMap<string, Branch>
  /** Checks that could be made now, best first. */
  readonly proposals: readonly Proposal[]
  /**
   * Expected minutes lost by stopping now, through being wrong, with those to put everything back;
   * infinite where one may not stop yet. Compare with `expectedMinutes` of the first proposal.
   */
  readonly stopping: number
}

export interface Suspect {
  readonly part: string | null
  readonly probability: number
}

/** Probability that a gate or fault holds, before any reading and now. */
export interface Branch {
  readonly before: number
  readonly now: number
  /** Below the clearing threshold now, and not before. */
  readonly cleared: boolean
  /** The check whose reading took it below the threshold for good. */
  readonly clearedBy?: string
}

export interface Proposal {
  readonly check: string
  /** It has a reading already, and is to be made once more in case that was a slip. */
  readonly furtherTake?: boolean
  /** Expected drop in entropy over parts, in bits. */
  readonly bits: number
  /** Minutes with the way to it from the machine as it stands. */
  readonly minutes: number
  readonly bitsPerMinute: number
  /**
   * Expected minutes to the end when this check comes first, the price of being wrong included. Only
   * for the checks that were looked at closely.
   */
  readonly expectedMinutes?: number
}

/** The part to fit without more checks, where that is the sensible check. */
export interface FirstFit {
  readonly part: string
  /** Minutes it costs if it was not the cause: to fit it, and its price in minutes of labour. */
  readonly minutes: number
  readonly probability: number
}

/** What to do next. */
export type Step =
  | { readonly kind: 'ask'; readonly proposal: Proposal }
  | {
      readonly kind: 'named'
      /** One part, or several where only together they explain the complaint. */
      readonly parts: readonly string[]
      readonly probability: number
    }
  | {
      readonly kind: 'cannotSeparate'
      /** The suspects that no check at hand can tell apart, or none that is worth its minutes; most probable first. */
      readonly group: readonly Suspect[]
      /** A check that would split them but is not possible now (tool, place, skipped), if there is one. */
      readonly splitBy?: string
      /** The parts of the likeliest explanation, where it takes several together and is likelier than all others. */
      readonly together?: { readonly parts: readonly string[]; readonly probability: number }
      /** What to fit first, by probability over cost; only where prices are known. */
      readonly firstFit?: FirstFit
    }
  | {
      readonly kind: 'contradiction'
      /** The readings that fit badly under the best explanation, the one first whose change would explain most. */
      readonly misfits: readonly Misfit[]
    }
  | {
      readonly kind: 'outsideThisTree'
      readonly probability: number
      /** The reading without which it would not be named, to be made again; left out where no single one is. */
      readonly again?: string
    }

export interface Misfit {
  readonly check: string
  /** Surprise of the reading under the explanation that fits all of them best, in bits. */
  readonly bits: number
  /** By how many bits all readings would surprise less without it. */
  readonly explains: number
  /** Expected drop in entropy over parts if it is made once more, in bits; 0 where it cannot be, or that cannot be foreseen. */
  readonly tells: number
}

export interface WalkOptions {
  /** Readings in the order they were taken. "Could not tell" is evidence that every outcome fits alike. */
  readonly evidence: readonly Evidence[]
  /** Checks not to propose: skipped, or the place or a tool is missing. */
  readonly impossible: ReadonlySet<string>
  /** What is apart, off, fitted or ready now. Left out: nothing is. */
  readonly stands?: Stands
}

/** For one check and one of its outcomes: what that outcome would do. */
export interface Prospect {
  readonly outcome: string
  /** Chance of this outcome as things stand. */
  readonly probability: number
  /** Gates and faults it would clear (topmost only). */
  readonly clears: readonly string[]
  /** The part it would name, if it would name one outright. */
  readonly names?: string
  /** The most probable part after it, with its probability. */
  readonly leads: Suspect
}

/** How one reading speaks for or against a part. */
export interface Weight {
  readonly check: string
  /** log2 of the likelihood ratio, part failed against not failed; above 0 speaks for it. */
  readonly bits: number
}

/** The check that is to be made next; null where there is nothing more to ask. */
export const proposedCheck = ({ step }: Pick<Walk, 'step'>): string | null =>
  step.kind === 'ask' ? step.proposal.check : null
