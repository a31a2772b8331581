import type { CautionsView } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'
import type { NextStep } from '../words/next-step.ts'

export interface CheckView {
  readonly id: string
  readonly title: string
  /** "Check to make now", "One more take, to be sure", "Your choice", "Correct this reading". */
  readonly standing: string
  /** Those of the check, of the place and of a hot engine. */
  readonly cautions: CautionsView
  /** Why it is not safe after what was answered; left out where it is. */
  readonly barred?: string
  /** What to put back, what to make ready, and the steps of the check; numbered through. */
  readonly steps: readonly StepsView[]
  /** What a good one reads, where it is measured: "310 Ω to 420 Ω", and where that comes from. */
  readonly limits?: {
    /** What a good one does with it: reads, gives, loses. */
    readonly verb: string
    readonly says: string
    /** "273 Ω to 370 Ω at −10 °C", where the meter shows another figure now. */
    readonly now?: string
    /** "Limits hold at 20 °C.", or what is taken where the sheet names none; empty where it is all one. */
    readonly at: string
    readonly source: string
  }
  /** "Ohms, lowest range", where it is measured. */
  readonly setting?: string
  /** The meter of the job, and what it can tell here, where it is measured. */
  readonly meter?: MeterView
  /** Engine, tools, time: label and value. */
  readonly terms: readonly Fact[]
  readonly spot?: SpotView
  /** Why it comes now, and why not the runner-up, sentences. */
  readonly why: readonly string[]
  readonly form: ReadingForm
  /** Back to the proposed check, where this one was chosen. */
  readonly backHref?: string
}

export interface StepsView {
  /** "Put back first", "Make ready", "Do this"; of a correction "How it was made". */
  readonly title: string
  /** Number of the first. */
  readonly from: number
  /** At least one. */
  readonly steps: readonly string[]
}

/** The meter at hand, as far as it matters for one check. */
export interface MeterView {
  /** "Common hand meter, leads zeroed at 0.2 Ω"; left out where a gauge reads it, and nobody chooses that. */
  readonly at?: { readonly says: string; readonly href: string; readonly change: string }
  /** Asks for the leads first, where they decide and were not zeroed. */
  readonly zero?: {
    readonly says: string
    readonly action: string
    readonly typed: string
    readonly problem?: string
  }
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
  /** "A", "B": as the flags of the drawing have it. */
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

export interface MeterKey {
  readonly label: string
  /** What it is called where the label does not say it. */
  readonly says: string
  readonly types: string
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
    readonly over?: { readonly label: string; readonly more: string }
    /** What meters show and phone keyboards hide: each types its text into the field. */
    readonly keys: readonly MeterKey[]
  }
  /** Fields from which the answer follows, in blocks. */
  readonly cells?: {
    readonly open: boolean
    readonly rows: readonly {
      readonly says: string
      readonly cells: readonly {
        readonly label: string
        readonly place: string
        readonly value: string
      }[]
    }[]
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
    /** Why it may be warmer than the air by now; left out where it has not run. */
    readonly hint?: string
  }
  /** Speed while it was read, where the limits hold at one. */
  readonly rpm?: { readonly value: string; readonly hint: string }
  /** What was typed when the form came back: sent again as it is, it is taken. */
  readonly kept?: string
  /** A clear sentence that says what to do, where the last try could not be taken. */
  readonly problem?: string
  /** Where an earlier reading is being corrected: what it read, and the ways out. */
  readonly corrects?: {
    readonly says: string
    readonly cancelHref: string
    /** For who wants to go to the machine again, where that can tell more. */
    readonly anew?: { readonly href: string; readonly text: string }
  }
  /** Where it is made once more: the way to leave the reading as it is. */
  readonly letStand?: { readonly action: string; readonly submit: string }
  /** Where the check can be skipped. */
  readonly skip?: {
    readonly action: string
    /** "Cannot do this", "Nobody to ask". */
    readonly summary: string
    readonly reasons: readonly string[]
    /** What was typed, where it could not be taken. */
    readonly reason: string
    readonly problem?: string
  }
}
