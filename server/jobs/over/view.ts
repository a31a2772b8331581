import type { SentFact } from '../../web/kept.ts'
import type { CheckView } from '../check/view.ts'
import type { LastReading } from '../readings/view.ts'
import type { Ticket } from '../standing/ticket.ts'
import type { CautionsView } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'

/** View model of a check-over: the reading to make now, and the report as far as it goes. */
export interface OverPage {
  readonly title: string
  readonly job: Ticket
  readonly head: readonly string[]
  readonly facts: readonly Fact[]
  readonly said: string
  readonly notice?: string
  /** What was sent with it and has no field on this page. */
  readonly sent?: readonly SentFact[]
  readonly last?: LastReading
  readonly check?: CheckView
  /** Once all is read: how to put back what is still apart. */
  readonly apart: readonly string[]
  readonly report: ReportView
  readonly notices: CautionsView
  readonly focus: 'notice' | 'field' | 'touch' | 'verdict'
}

/** Part by part: good, bad and how, or what cannot be told. */
export interface ReportView {
  /** "12 of 26 read.", or what came of it. */
  readonly says: string
  readonly parts: readonly PartReport[]
  /** What readings with the engine stopped do not show; sentences. */
  readonly notShown: readonly string[]
  /** How sure a "bad" is over so many readings. */
  readonly sure: string
  /** Twins side by side; sentences. */
  readonly twins: readonly string[]
  /** The job that it is compared with. */
  readonly before?: { readonly href: string; readonly text: string }
  /** The table to fill; left out once all is read. */
  readonly tableHref?: string
  readonly csvHref: string
  readonly jsonHref: string
}

export interface PartReport {
  readonly name: string
  /** "Good", "Bad: open", "Cannot be told with this meter", "Not read". */
  readonly word: string
  readonly kind: 'good' | 'bad' | 'unsure' | 'open'
  readonly rows: readonly OverRowView[]
}

export interface OverRowView {
  readonly id: string
  /** "Resistance from end to end" */
  readonly says: string
  /** "exciter plug, pins 1 and 2" */
  readonly at: string
  readonly limits: string
  /** "365 Ω", or empty. */
  readonly read: string
  /** "364.8 Ω ± 5 Ω", where it was corrected or is in doubt. */
  readonly compared: string
  readonly word: string
  /** Of the check-over that it is compared with. */
  readonly before?: string
  /** To correct it, to read it, or to take it once more. */
  readonly way: { readonly href: string; readonly text: string }
}
