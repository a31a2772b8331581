import type { CautionCard } from '../knowledge/case.ts'

/**
 * View model of a job's page. Presenters make it, templates only print it: every sentence, number and
 * address is finished here.
 */
export interface JobPage {
  /** Of the document: "Job 12: peak voltage of the exciter". */
  readonly title: string
  readonly job: {
    readonly id: number
    readonly version: number
    readonly href: string
    /** As printed on the ticket: "0012". */
    readonly number: string
  }
  /** The head of the work order: label and value, as in "Machine: …". */
  readonly facts: readonly Fact[]
  /** Read out when the page has changed under a screen reader: what was taken, what comes now. */
  readonly said: string
  /** A sentence above everything: what went wrong with the last post. */
  readonly notice?: string
  /** The check to make now (proposed or chosen), or none where the verdict stands alone. */
  readonly check?: CheckView
  readonly verdict?: VerdictView
  readonly repair?: RepairView
  readonly readings: readonly ReadingRow[]
  /** What pairs of readings say together, as sentences. */
  readonly together: readonly string[]
  readonly suspects: SuspectsView
  readonly tree: BranchView
  /** The same as a drawing, an SVG ready to print. */
  readonly treeDrawing: string
  readonly others: OthersView
  /** Where the keyboard goes when the page was swapped in by a script. */
  readonly focus: 'notice' | 'field' | 'touch' | 'check' | 'verdict'
}

export interface Fact {
  readonly label: string
  readonly value: string
  /** Where it can be changed. */
  readonly way?: { readonly href: string; readonly text: string }
}

export interface CheckView {
  readonly id: string
  readonly title: string
  /** "Check to make now", "Your choice", "Correct this reading". */
  readonly standing: string
  /** Those of the check, of the place and the engine, and those that stand on every page that instructs. */
  readonly cautions: readonly CautionCard[]
  /** Set-ups still to make, as steps, then the steps of the check, numbered through. */
  readonly setups: readonly string[]
  readonly steps: readonly string[]
  /** Number of the first of `steps`. */
  readonly stepsFrom: number
  /** What a good one reads, where it is measured: "310 Ω to 420 Ω", and where that comes from. */
  readonly limits?: {
    readonly says: string
    /** "Limits hold at 20 °C.", or what is taken where the sheet names none; empty where it is all one. */
    readonly at: string
    readonly source: string
  }
  /** "Ohms, lowest range", where it is measured. */
  readonly meter?: string
  /** The meter of the job, and what it can tell here, where it is measured. */
  readonly instrument?: InstrumentView
  /** Engine, tools, time: label and value. */
  readonly terms: readonly Fact[]
  readonly spot?: SpotView
  readonly why: string
  /** Why not the runner-up, or empty. */
  readonly rival: string
  readonly prospects: readonly ProspectRow[]
  readonly form: ReadingForm
  /** Back to the proposed check, where this one was chosen. */
  readonly backHref?: string
}

/** The meter at hand, as far as it matters for one check. */
export interface InstrumentView {
  /** "Common hand meter, leads zeroed at 0.2 Ω" */
  readonly says: string
  readonly href: string
  readonly change: string
  /** Sentences that ask for the leads to be zeroed first, or empty. */
  readonly prompt: string
  /** What this meter can and cannot tell here, and ways that can; left out where it is fit. */
  readonly unfit?: { readonly says: string; readonly ways: readonly NextStep[] }
}

/** One answer that could come back. */
export interface ProspectRow {
  /** "310 Ω to 420 Ω", "OL", "No spark". */
  readonly answer: string
  /** "in range", or empty where the answer says it all. */
  readonly judged: string
  /** "62 %" */
  readonly chance: string
  /** What it would clear, name, or point to. */
  readonly effect: string
}

export interface SpotView {
  readonly says: string
  readonly where?: string
  /** A sentence, where the place is hard to touch well. */
  readonly awkward?: string
  readonly probes: readonly ProbeView[]
  /** The connector face as an SVG, ready to print, or none where there is no connector. */
  readonly face?: { readonly svg: string; readonly view: string }
}

export interface ProbeView {
  /** "One probe", "Other probe". */
  readonly label: string
  readonly says: string
  readonly wire?: WireView
}

export interface WireView {
  /** "BK/RD" */
  readonly code: string
  /** "black with red tracer" */
  readonly name: string
  /** Names of the swatch classes, base first: `wire-bk`. */
  readonly swatches: readonly string[]
}

export interface ReadingForm {
  readonly action: string
  /** What the field or the choice is called: "Reading in Ω". */
  readonly label: string
  readonly hint: string
  /** Measured checks have a field; others have answers. */
  readonly field?: {
    readonly unit: string
    /** What the button for a meter over its range says, where the quantity can be over it. */
    readonly over?: string
  }
  readonly answers: readonly { readonly id: string; readonly says: string }[]
  readonly typed: string
  readonly submit: string
  /** How warm the part is, where its material makes that matter. */
  readonly warmth?: {
    readonly choices: readonly {
      readonly value: string
      readonly says: string
      readonly chosen: boolean
    }[]
    readonly celsius: string
  }
  /** Speed while it was read, where the limits hold at one. */
  readonly rpm?: { readonly value: string; readonly hint: string }
  /** What was typed when the form came back: sent again as it is, it is taken. */
  readonly kept?: string
  /** A clear sentence that says what to do, where the last try could not be taken. */
  readonly problem?: string
  /** Where an earlier reading is being corrected: what it read, and the way out. */
  readonly corrects?: { readonly says: string; readonly cancelHref: string }
  /** Where the check can be passed over. */
  readonly skip?: {
    readonly action: string
    readonly reasons: readonly string[]
    /** Unfolded, because the last reason could not be taken. */
    readonly open: boolean
  }
}

export interface ReadingRow {
  readonly check: string
  readonly title: string
  /** As typed, tidied: "8.8 Ω", "OL", "No spark", "Could not tell". */
  readonly read: string
  /** "lowest of 3 touches: 8.9 Ω, 9.4 Ω, 8.8 Ω", or empty. */
  readonly touched: string
  /** "conforms, 97 % within limits"; empty where nothing is judged. */
  readonly judged: string
  /** What it was corrected for, step by step, and what it comes to. */
  readonly corrected: readonly string[]
  /** Poor contact, leads not zeroed, why it is undecided: sentences. */
  readonly notes: readonly string[]
  /** Limits, reading and corrected reading as an SVG, ready to print. */
  readonly scale?: { readonly svg: string; readonly open: boolean }
  readonly budget?: BudgetView
  /** A small form for more touches, where it is measured. */
  readonly again?: {
    readonly action: string
    /** Of the field, and of the sentence beside it. */
    readonly id: string
    readonly label: string
    readonly unit: string
    readonly typed: string
    readonly problem?: string
  }
  /** What it cleared, as a sentence, or empty. */
  readonly effect: string
  readonly correctHref: string
  readonly withdrawAction: string
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
  /** Those that tell most a minute, best first. */
  readonly best: readonly OtherCheck[]
  /** All further ones that are possible now. */
  readonly more: readonly OtherCheck[]
  /** Passed over, each with the reason. */
  readonly passedOver: readonly OtherCheck[]
  /** For which a tool is missing, or the place. */
  readonly impossible: readonly OtherCheck[]
}

export interface OtherCheck {
  readonly title: string
  readonly href: string
  /** Time and worth, or why it was passed over. */
  readonly says: string
}

export interface VerdictView {
  readonly kind: 'named' | 'cannotSeparate' | 'contradiction' | 'outsideThisTree'
  /** What kind of verdict it is, in words: "Named", "Cannot be told apart". */
  readonly stamp: string
  /** One sentence. */
  readonly says: string
  /** Sentences of evidence, most telling first. */
  readonly evidence: readonly string[]
  readonly cautions: readonly CautionCard[]
  /** What to do next: repair, proof, which check to repeat; each with a way to it where there is one. */
  readonly next: readonly NextStep[]
  /** What it could still be, as sentences. */
  readonly couldBe: readonly string[]
}

/** Writing down the repair, proving it, or that all is done. */
export interface RepairView {
  readonly title: string
  readonly says: string
  readonly steps: readonly string[]
  readonly action: string
  /** Parts the repair is of, as the form sends them back. */
  readonly parts: string
  readonly buttons: readonly { readonly value: string; readonly says: string }[]
}

export interface NextStep {
  readonly says: string
  readonly way?: { readonly href: string; readonly text: string }
}
