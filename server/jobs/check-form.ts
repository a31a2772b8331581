import type { CheckCard } from '../knowledge/case.ts'
import { parseReading } from '../measure/parse.ts'
import type { Reading } from '../measure/reading.ts'
import { textOf, wholeOf } from './form.ts'

/** What any form about one check of a job sends. */
export interface CheckForm {
  /** The version of the job that the form was made for; 0, which no job has, where it names none. */
  readonly version: number
  readonly check: string
  /** What was typed, trimmed, and cut where it is too long to be any reading or to be shown again. */
  readonly typed: string
  /** The button that was pressed: `over`, `could-not-tell` or the name of an answer. */
  readonly choice: string
  readonly reason: string
}

/** Longer than any reading or reason that people write. */
const longest = 200

export function checkFormFrom(body: unknown): CheckForm {
  return {
    version: wholeOf(textOf(body, 'version')) ?? 0,
    check: textOf(body, 'check'),
    typed: textOf(body, 'typed').trim().slice(0, longest),
    choice: textOf(body, 'choice'),
    reason: textOf(body, 'reason').trim(),
  }
}

/** Bad input is a value: a sentence that says what to do. */
export type Read<T> =
  | ({ readonly ok: true } & T)
  | { readonly ok: false; readonly sentence: string }

/** The reading a form means, with the text it stands for. */
export function readReading(
  card: CheckCard,
  { typed, choice }: CheckForm,
): Read<{ typed: string; reading: Reading }> {
  if (choice === 'could-not-tell')
    return { ok: true, typed: '', reading: { kind: 'could-not-tell' } }
  if (card.measured === undefined) return readAnswer(card, choice)
  const text = choice === 'over' ? 'OL' : typed
  const parsed = parseReading(text, card.measured.quantity)
  if (!parsed.ok) return { ok: false, sentence: parsed.problem }
  return { ok: true, typed: text, reading: parsed.reading }
}

function readAnswer({ answers = [] }: CheckCard, choice: string) {
  const chosen = answers.find(({ id }) => id === choice)
  if (chosen === undefined) return { ok: false, sentence: 'Choose one of the answers.' } as const
  return { ok: true, typed: '', reading: { kind: 'answer', answer: chosen.id } } as const
}

/** Why a check is passed over; without a reason nobody could take it up again later. */
export function readReason({ reason }: CheckForm): Read<{ reason: string }> {
  if (reason === '') {
    return {
      ok: false,
      sentence: 'Say why this check cannot be made: choose a reason or type one.',
    }
  }
  if (reason.length <= longest) return { ok: true, reason }
  return { ok: false, sentence: `Keep the reason under ${longest} characters.` }
}
