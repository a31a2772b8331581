/** View models of the pages about knowledge health. */

/** All cases, one row each. */
export interface HealthPage {
  readonly title: string
  /** What the cases worked out so far come to. */
  readonly totals: readonly string[]
  readonly meaning: string
  readonly working: Working | null
  readonly columns: readonly string[]
  readonly machines: readonly {
    readonly id: string
    readonly name: string
    readonly rows: readonly HealthRow[]
  }[]
  /** Kinds of check that pay nowhere; null until all cases are worked out. */
  readonly kinds: { readonly says: string; readonly files: readonly string[] } | null
  /** For a screen reader, when the last figure has come. */
  readonly said: string
}

export interface HealthRow {
  readonly id: string
  readonly complaint: string
  readonly href: string
  /** What stands in the place of the figures while there are none, or empty. */
  readonly says: string
  readonly figures: readonly Figure[]
}

export interface Figure {
  readonly label: string
  readonly value: string
}

/** While figures are still to come. */
export interface Working {
  readonly says: string
  /** The page itself, to look again. */
  readonly href: string
}

/** One complaint on one machine. */
export interface CaseHealthPage {
  readonly title: string
  readonly machine: string
  readonly meaning: string
  readonly working: Working | null
  /** Why there are no figures and none will come, or empty. */
  readonly failed: string
  readonly boxes: readonly ToolBox[]
  readonly neverPay: NeverPay | null
  /** What is taken for something else because it is too rare; empty where that is next to nothing. */
  readonly leftOut: string
  readonly said: string
}

/** What can be found with the tools of one box. */
export interface ToolBox {
  readonly id: string
  readonly title: string
  readonly figures: readonly Figure[]
  /** Faults under another name or none, and groups that stay together; or that there are none. */
  readonly says: string
  readonly missed: readonly string[]
  readonly groups: readonly Group[]
}

export interface Group {
  /** "Ignition coil or plug cap" */
  readonly parts: string
  /** "Ends here: ignition coil is open." */
  readonly faults: string
}

export interface NeverPay {
  readonly says: string
  readonly checks: readonly { readonly title: string; readonly place: string }[]
}
