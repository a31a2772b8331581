import type { CautionCard } from '../knowledge/case.ts'

/**
 * View models of the job pages. Presenters make them, templates only print them: every sentence,
 * number and address is finished here.
 */
export interface JobPage {
  readonly title: string
  readonly job: { readonly id: number; readonly version: number; readonly href: string }
  /** The head of the work order: label and value, as in "Machine: …". */
  readonly facts: readonly Fact[]
  /** The check to make now (proposed or chosen), or none where the verdict stands alone. */
  readonly check?: CheckView
  readonly verdict?: VerdictView
  readonly readings: readonly ReadingRow[]
  readonly suspects: readonly SuspectRow[]
  readonly tree: BranchView
  /** Other checks that could be made now, best first, then those passed over with the reason. */
  readonly others: readonly OtherCheck[]
  /** A sentence above everything: what went wrong with the last post. */
  readonly notice?: string
  /** Cautions that stand on every page that instructs. */
  readonly always: readonly CautionCard[]
}

export interface Fact {
  readonly label: string
  readonly value: string
}

export interface CheckView {
  readonly id: string
  readonly title: string
  /** "Proposed" or "Your choice". */
  readonly standing: string
  /** "3 min, of which 1 min to unplug" */
  readonly time: string
  readonly cautions: readonly CautionCard[]
  /** Set-ups still to make, as steps, then the steps of the check. */
  readonly setups: readonly string[]
  readonly steps: readonly string[]
  readonly tools: string
  readonly meter?: string
  readonly spot?: SpotView
  /** "310 Ω to 420 Ω at 20 °C", with its source. */
  readonly limits?: { readonly says: string; readonly source: string }
  readonly why: string
  /** Sentences: what each answer would clear or name, with its chance. */
  readonly prospects: readonly Fact[]
  readonly form: ReadingForm
}

export interface SpotView {
  readonly says: string
  readonly where?: string
  readonly awkward: boolean
  readonly probes: readonly {
    readonly label: string
    readonly says: string
    readonly wire?: WireView
  }[]
  /** The connector face as an SVG, ready to print, or none where there is no connector. */
  readonly face?: string
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
  readonly field?: { readonly unit: string; readonly over: boolean }
  readonly answers?: readonly { readonly id: string; readonly says: string }[]
  readonly typed: string
  /** A clear sentence that says what to do, where the last try could not be taken. */
  readonly problem?: string
  /** Set where an earlier reading is being corrected. */
  readonly corrects?: string
  readonly skipReasons: readonly string[]
}

export interface ReadingRow {
  readonly check: string
  readonly title: string
  /** As typed, tidied: "8.8 Ω", "OL", "No spark", "Could not tell". */
  readonly read: string
  /** "in range", "open", … or empty. */
  readonly judged: string
  /** What it cleared, as a sentence, or empty. */
  readonly effect: string
  readonly correctHref: string
  readonly withdrawAction: string
}

export interface SuspectRow {
  readonly name: string
  readonly percent: string
  /** 0 to 100, whole, for the bar. */
  readonly width: number
}

export interface BranchView {
  readonly says: string
  /** "any of", "all of", "at least 2 of", or empty for a fault. */
  readonly gate: string
  readonly percent: string
  readonly cleared: boolean
  /** "cleared by: …" */
  readonly clearedBy?: string
  /** Folded away unless asked for. */
  readonly open: boolean
  readonly below: readonly BranchView[]
}

export interface OtherCheck {
  readonly title: string
  readonly href: string
  readonly time: string
  /** "tells 0.8 bit", or why it was passed over. */
  readonly says: string
}

export interface VerdictView {
  readonly kind: 'named' | 'cannotSeparate' | 'contradiction' | 'outsideThisTree'
  /** One sentence. */
  readonly says: string
  /** Sentences of evidence, most telling first. */
  readonly evidence: readonly string[]
  /** What to do next: repair, proof, which check to repeat. */
  readonly next: readonly string[]
  readonly cautions: readonly CautionCard[]
  /** What it could still be, as sentences. */
  readonly couldBe: readonly string[]
}
