import type { SentFact } from '../../web/kept.ts'
import type { BranchView, OthersView, StandsView, SuspectsView } from '../beside/view.ts'
import type { CheckView, ProspectRow } from '../check/view.ts'
import type { PhotoView } from '../photos/view.ts'
import type { LastReading, ReadingRow } from '../readings/view.ts'
import type { Room } from '../standing/rooms.ts'
import type { Ticket } from '../standing/ticket.ts'
import type { RepairView, VerdictView } from '../verdict/view.ts'
import type { CautionsView } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'

/** A room beside the work: its head, and what is in it where it is open. */
export interface RoomView {
  readonly name: Room
  readonly title: string
  /** What it holds in a few words, to know without opening it; may be empty. */
  readonly gist: string
  /** Opens it where it is folded, folds it where it is open. */
  readonly href: string
  /** Left out while it is folded. */
  readonly inside?: RoomInside
}

/** What an open room holds. */
export type RoomInside =
  | {
      readonly room: 'why'
      readonly why: readonly string[]
      /** Where an apprentice learns the order of the checks. */
      readonly learnHref?: string
    }
  | { readonly room: 'answers'; readonly prospects: readonly ProspectRow[] }
  | {
      readonly room: 'readings'
      readonly readings: readonly ReadingRow[]
      /** What pairs of readings say together, as sentences. */
      readonly together: readonly string[]
      readonly photos: readonly PhotoView[]
      /** The page where one is added or deleted. */
      readonly photosHref: string
    }
  | { readonly room: 'suspects'; readonly suspects: SuspectsView }
  | {
      readonly room: 'tree'
      readonly tree: BranchView
      /** The same as a drawing, an SVG ready to print. */
      readonly drawing: string
    }
  | { readonly room: 'stands'; readonly stands: StandsView }
  | { readonly room: 'others'; readonly others: OthersView }
  | {
      readonly room: 'found'
      readonly action: string
      readonly parts: readonly { readonly id: string; readonly name: string }[]
    }

/** What an owner left apart, off or fitted, with the way back of each, and the stop that nobody has tried since. */
export interface LeftView {
  /** What can hurt, a sentence each. */
  readonly heed: readonly string[]
  /** What the owner was told to put right as it was taken over, in the words that they heard; or empty. */
  readonly mending: string
  readonly action: string
  readonly items: readonly {
    /** What the owner was told to do. */
    readonly was: string
    readonly unsure: boolean
    /** How it is put back. */
    readonly back: string
    readonly setup: string
  }[]
  /** How the stop is tried, where it has to be; or empty. */
  readonly stop: string
}

/**
 * View model of a job's page. Presenters make it, templates only print it: every sentence, number and
 * address is finished here.
 */
export interface JobPage {
  /** Of the document: "Job 12: peak voltage of the exciter". */
  readonly title: string
  readonly job: Ticket
  /** The head of the work order in one line: which check this is, machine, complaint. */
  readonly head: readonly string[]
  /** What it unfolds to: label and value, as in "Machine: …". */
  readonly facts: readonly Fact[]
  /** Read out when the page has changed under a screen reader: what was taken, what comes now. */
  readonly said: string
  /** A sentence above everything: what went wrong with the last post. */
  readonly notice?: string
  /** What was sent with it and has no field on this page. */
  readonly sent?: readonly SentFact[]
  /** What an owner by phone left apart, for whoever takes the machine over. */
  readonly left?: LeftView
  /** What came back last, and what it meant. */
  readonly last?: LastReading
  /** The check to make now (proposed or chosen), or none where the verdict stands alone. */
  readonly check?: CheckView
  readonly verdict?: VerdictView
  /** How to put back what is still apart, beside a verdict; empty where another box says it. */
  readonly apart: readonly string[]
  /** The same of what was made ready so that it can run: once it has been tried. */
  readonly afterRun: readonly string[]
  readonly repair?: RepairView
  /** It stands above the verdict: something was repaired, and the verdict is how one came to it. */
  readonly repairFirst: boolean
  /** What stands on every page that instructs, once. */
  readonly notices: CautionsView
  /** What stands beside the work, each room folded or open. */
  readonly rooms: readonly RoomView[]
  /** What only the sheet on paper has. */
  readonly onPaper: {
    /** When it was opened, what the owner says, the note. */
    readonly facts: readonly Fact[]
    /** Every reading as one line. */
    readonly readings: readonly string[]
    /** The answers of the check, to tick. */
    readonly ticks: readonly string[]
    /** Lines to write on. */
    readonly blanks: readonly string[]
  }
  /** Where the keyboard goes when the page was swapped in by a script. */
  readonly focus: 'notice' | 'field' | 'touch' | 'check' | 'verdict' | 'repair'
}
