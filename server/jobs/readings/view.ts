import type { CautionsView } from '../words/cautions/cautions.ts'

export interface ReadingRow {
  readonly check: string
  readonly title: string
  /** As typed, tidied: "52.5 Ω", "OL", "No spark", "Could not tell". */
  readonly read: string
  /** "lowest of 3 touches: 52.7 Ω, 58.1 Ω, 52.5 Ω", or empty. */
  readonly touched: string
  /** "Good", "Bad: a path to ground"; empty where nothing is judged. */
  readonly judged: string
  /** What it was corrected for, step by step, and what it comes to. */
  readonly corrected: readonly string[]
  /** Poor contact, leads not zeroed, why it is undecided: sentences. */
  readonly notes: readonly string[]
  /** Limits, reading and corrected reading as an SVG, ready to print. */
  readonly scale?: { readonly svg: string; readonly open: boolean }
  /** "97 % chance of lying within the limits."; empty where nothing is judged. */
  readonly sure: string
  readonly budget?: BudgetView
  /** A small form for more touches, where it is measured and the machine still stands as it was for it. */
  readonly take?: {
    readonly action: string
    /** Of the field, and of the sentence beside it. */
    readonly id: string
    readonly label: string
    readonly unit: string
    readonly typed: string
    readonly problem?: string
    /** What was typed when it came back: sent again as it is, it is taken. */
    readonly kept?: string
  }
  /** The page that says how to get there again, where it is measured and the machine stands otherwise. */
  readonly anewHref?: string
  /** It is what an owner told by phone: that it weighs less, and the way to make it oneself. */
  readonly told?: { readonly says: string; readonly href?: string }
  /** What it cleared, as a sentence, or empty. */
  readonly effect: string
  readonly correctHref: string
  readonly withdrawAction: string
}

/** What came back last, in one sentence, and what it meant. */
export interface LastReading {
  /** "Stop wire read 430 Ω." */
  readonly says: string
  /** "Good", "Bad: high", or empty where there is nothing to judge. */
  readonly word: string
  /** "Rules out: …", or where it moved the suspicion. */
  readonly means: string
  readonly correctHref: string
  /** What was seen can be put right now: how, and where to write down which part it was. */
  readonly mend?: {
    readonly says: string
    /** What to heed when it is tried. */
    readonly cautions: CautionsView
    /** What goes back before it can be tried. */
    readonly back: readonly string[]
    /** "Set it for work: stop switch at RUN." */
    readonly setForWork: string
    readonly ways: readonly { readonly href: string; readonly text: string }[]
  }
  /** One more touch or pull, where it is measured. */
  readonly again?: { readonly href: string; readonly text: string }
  /** The same read at a connector nearer to the part, where there is one. */
  readonly nearer?: { readonly href: string; readonly text: string }
}

/** The uncertainty of one reading, with digits enough to do every sum again. */
export interface BudgetView {
  /** From as read to as compared with the limits, a line of arithmetic each. */
  readonly steps: readonly string[]
  readonly rows: readonly BudgetRow[]
  /** Combined uncertainty, 95 % half-width and chances, as sentences. */
  readonly totals: readonly string[]
}

export interface BudgetRow {
  /** "accuracy of the meter" */
  readonly name: string
  /** "0.8 % of 123 Ω + 4 × 0.1 Ω" */
  readonly from: string
  /** "± 1.384 Ω" */
  readonly input: string
  readonly distribution: string
  readonly u: string
  readonly sensitivity: string
  readonly sensitivityFrom: string
  /** Sensitivity times u, in the unit of the result. */
  readonly adds: string
  /** Share of u², "62 %". */
  readonly share: string
}
