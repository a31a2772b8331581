/** View models of the pages about base rates. */

/** All families, and how often it was what was named. */
export interface RatesPage {
  readonly title: string
  readonly lead: string
  readonly meaning: readonly string[]
  readonly families: readonly {
    readonly name: string
    readonly says: string
    /** Each sheet of the family. */
    readonly machines: readonly Way[]
  }[]
  readonly calibration: {
    readonly says: string
    readonly meaning: string
    readonly rows: readonly CalibrationRow[]
  }
}

/** One tenth of the chances, all in words. */
export interface CalibrationRow {
  readonly chance: string
  readonly said: string
  readonly right: string
  readonly share: string
  readonly interval: string
}

/** The rates of one sheet. */
export interface SheetRatesPage {
  readonly title: string
  /** What was wrong with the last post. */
  readonly notice?: string
  readonly lead: string
  readonly meaning: readonly string[]
  /** Causes that were confirmed on this family. */
  readonly confirmed: readonly RateRow[]
  /** Every cause on the sheet, part by part. */
  readonly parts: readonly { readonly name: string; readonly rows: readonly RateRow[] }[]
  /** Of each complaint of which something was confirmed, how often it was none of the tree, as sentences. */
  readonly elsewhere: readonly string[]
  readonly repairs: readonly RepairRow[]
  /** How many more there are, or empty. */
  readonly older: string
  readonly leave: LeaveForm
}

export interface RateRow {
  /** The part, where the row stands by itself. */
  readonly part: string
  readonly failure: string
  readonly tables: string
  readonly here: string
  readonly elsewhere: string
  readonly now: string
  readonly jobs: readonly Way[]
  /** What is not listed of them, or empty. */
  readonly more: string
}

/** A confirmed repair of the family. */
export interface RepairRow {
  readonly job: Way
  readonly says: string
  /** Why it is left out; null where it counts. */
  readonly leftOut: string | null
  /** To the form that leaves it out, or where a form takes it in again. */
  readonly href: string
  readonly number: number
}

export interface LeaveForm {
  readonly action: string
  readonly job: string
  readonly reason: string
  readonly problem?: { readonly field: 'job' | 'reason'; readonly says: string } | undefined
}

export interface Way {
  readonly href: string
  readonly text: string
}
