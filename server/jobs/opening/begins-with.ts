import { caseFor } from '../../knowledge/instantiate.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { textOf } from '../../web/fields.ts'
import { type CheckForm, checkFormFrom, readTouches, type Understood } from '../posts/check-form.ts'
import { readManner } from '../posts/manner.ts'
import { readZero } from '../posts/zero.ts'
import type { JobEvent } from '../record/events.ts'
import type { Opened } from '../record/fold.ts'

/** A reading that was judged without a job, and that a job begins with: the fields it comes in, as text. */
export interface BeginsWith extends CheckForm {
  /** Ω with the probes held together; empty where they were not. */
  readonly zero: string
}

/** Names of its fields, as they are sent on. */
export const beginningFields = ['check', 'typed', 'warmth', 'celsius', 'rpm', 'zero'] as const

/** The reading that a form or an address comes with; nothing where it comes with none. */
export function beginsIn(form: unknown): BeginsWith | undefined {
  const read = checkFormFrom(form)
  if (read.check === '') return undefined
  return { ...read, zero: textOf(form, 'zero').trim() }
}

/**
 * What is written down after `opened`: the leads of the meter, where they were zeroed, and the reading.
 * A sentence where this job has no such check, or the reading is none.
 */
export function firstEvents(
  knowledge: Knowledge,
  { machine, complaint, conditions }: Opened,
  begins: BeginsWith,
): Understood<{ events: readonly JobEvent[] }> {
  const card = caseFor(knowledge, machine, complaint).checks.get(begins.check)
  if (card === undefined) {
    return { ok: false, sentence: 'This complaint has no such check: choose another complaint.' }
  }
  const zero = readZero(begins.zero)
  if (typeof zero === 'string') return { ok: false, sentence: zero }
  const read = readTouches(card, begins)
  if (!read.ok) return read
  const how = readManner(card, begins, conditions)
  if (!how.ok) return how
  const { typed, touches } = read
  const leads: JobEvent = { kind: 'meter', meter: { kind: 'class', id: conditions.meter }, zero }
  const reading: JobEvent = { kind: 'reading', check: card.id, typed, touches, manner: how.manner }
  return { ok: true, events: zero === null ? [reading] : [leads, reading] }
}
