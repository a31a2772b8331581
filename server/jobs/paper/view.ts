import type { PhotoView } from '../photos/view.ts'
import type { Ticket } from '../standing/ticket.ts'
import type { CautionsView } from '../words/cautions.ts'
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
  readonly readings: readonly SheetReading[]
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

export interface SheetReading {
  readonly title: string
  /** "exciter plug, pins 1 and 2"; empty where nothing is touched. */
  readonly at: string
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
