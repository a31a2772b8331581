import type { PhotoView } from '../photos/view.ts'
import type { Ticket } from '../standing/ticket.ts'
import type { CautionsView } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'

/**
 * The sheet that goes with the machine: for whoever pays, whoever decides on the warranty, and whoever
 * has it on the bench next.
 */
export interface JobSheet {
  readonly title: string
  readonly job: Ticket
  /** "Finished", or "Not finished" and what is missing. */
  readonly state: string
  /** What the owner said, and how it was measured. */
  readonly facts: readonly Fact[]
  /** Of the machine and of people: what was written down of it. */
  readonly particulars: readonly Fact[]
  /** Where that is written down; not on paper. */
  readonly form: ParticularsFormView
  readonly readings: readonly SheetReading[]
  /** Who took the readings, in a sentence, where it was one person; or empty. */
  readonly takenBy: string
  /** "Spark on the tester: no spark tester here." */
  readonly leftOut: readonly string[]
  /** At most four. */
  readonly photos: readonly PhotoView[]
  /** How the verdict came about: at most five sentences. */
  readonly reasoning: readonly string[]
  /** What kind of verdict it is, empty while there is none; and the verdict. */
  readonly verdict: { readonly stamp: string; readonly says: string }
  readonly repairs: readonly SheetRepair[]
  readonly proof?: ProofOnSheet
  readonly heed: HeedOnSheet
  /** Labels of the lines to write on. */
  readonly signatures: readonly string[]
  /** What the sheet knows: "As it stood on 7 May 2031, 14:05." */
  readonly asOf: string
}

export interface ParticularsFormView {
  readonly action: string
  readonly version: number
  /** Unfolded, as it came back. */
  readonly open: boolean
  readonly notice?: string
  readonly fields: readonly {
    readonly name: string
    readonly label: string
    readonly value: string
    readonly problem?: string
  }[]
  readonly submit: string
}

export interface SheetReading {
  readonly title: string
  /** "exciter plug, pins 1 and 2"; empty where nothing is touched. */
  readonly at: string
  /** Who took it, as a sentence; empty where nobody is named, or it is the same for all. */
  readonly by: string
  /** As it was typed, or the answer. */
  readonly typed: string
  /** "150 Ω ± 5.3 Ω": as compared with the limits; empty where nothing is measured. */
  readonly corrected: string
  /** What it was corrected for, a sentence a step. */
  readonly steps: readonly string[]
  readonly limits: string
  /** "Good", "Bad: open"; empty where nothing is judged. */
  readonly word: string
  /** What it meant, as a sentence. */
  readonly means: string
}

export interface SheetRepair {
  /** "The start exciter winding" */
  readonly parts: string
  /** "7 May 2031, 14:05" */
  readonly when: string
  /** How it failed, the note, the price and the minutes: only what was written down. */
  readonly facts: readonly Fact[]
  /** What came of it, as a sentence. */
  readonly came: string
}

/** How the repair was proved, or is to be. */
export interface ProofOnSheet {
  readonly says: string
  readonly steps: readonly string[]
}

/** What the next person has to know before touching the machine. */
export interface HeedOnSheet {
  readonly cautions: CautionsView
  readonly sentences: readonly string[]
  /** How to put back what is still apart, off or fitted. */
  readonly apart: readonly string[]
}
