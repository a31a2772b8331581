export interface SuspectsView {
  readonly rows: readonly SuspectRow[]
  /** "14 other parts, 3 % or less." or empty. */
  readonly rest: string
}

export interface SuspectRow {
  readonly name: string
  readonly percent: string
  /** Chance before any reading. */
  readonly before: string
  /** 0 to 100, whole, for the bar: now and before. */
  readonly width: number
  readonly beforeAt: number
}

export interface BranchView {
  readonly says: string
  /**
   * "any of these", "all of these together", "at least 2 of these"; empty for a fault, and for a part,
   * which fails in any of its ways.
   */
  readonly gate: string
  readonly percent: string
  readonly cleared: boolean
  /** "cleared: start exciter read 365 Ω, in range (reading 2)", or empty. */
  readonly clearedBy: string
  /** Unfolded when the page comes. */
  readonly open: boolean
  readonly below: readonly BranchView[]
}

/** Checks that could be taken instead of the one on the page. */
export interface OthersView {
  /** Words that were looked for, and where to look. */
  readonly find: { readonly action: string; readonly words: string; readonly said: string }
  /** Those that tell most a minute, best first; none that tells nothing. */
  readonly best: readonly OtherCheck[]
  /** All that are possible now, by what they are about. */
  readonly groups: readonly { readonly name: string; readonly checks: readonly OtherCheck[] }[]
  /** Skipped, each with the reason. */
  readonly skipped: readonly OtherCheck[]
  /** For which a tool is missing, or the place. */
  readonly impossible: readonly OtherCheck[]
}

export interface OtherCheck {
  readonly title: string
  readonly href: string
  /** Time and worth, or why it was skipped. */
  readonly says: string
}

/** The machine as it stands, as far as its pages know. */
export interface StandsView {
  /** Where the form goes that says that something is not so. */
  readonly action: string
  readonly items: readonly {
    /** How it came to be so: "Lift the hood and hook it back." */
    readonly says: string
    /** A check was skipped, and nobody knows. */
    readonly unsure: boolean
    /** What the form sends. */
    readonly setup: string
  }[]
}
