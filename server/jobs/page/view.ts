import type { BranchView, OthersView, StandsView, SuspectsView } from '../beside/view.ts'
import type { CheckView } from '../check/view.ts'
import type { ReadingRow } from '../readings/view.ts'
import type { RepairView, VerdictView } from '../verdict/view.ts'
import type { Fact } from '../words/fact.ts'

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
  /** How to put back what is still apart, beside a verdict; empty where another box says it. */
  readonly apart: readonly string[]
  readonly repair?: RepairView
  readonly readings: readonly ReadingRow[]
  /** What pairs of readings say together, as sentences. */
  readonly together: readonly string[]
  readonly suspects: SuspectsView
  readonly tree: BranchView
  /** The same as a drawing, an SVG ready to print. */
  readonly treeDrawing: string
  readonly others: OthersView
  /** What is apart, off or fitted now; left out where nothing is. */
  readonly stands?: StandsView
  /** Where the keyboard goes when the page was swapped in by a script. */
  readonly focus: 'notice' | 'field' | 'touch' | 'check' | 'verdict'
}
