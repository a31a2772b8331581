import type { CheckCard } from '../../knowledge/case.ts'
import { parseTouches } from '../../measure/reading/parse-touches.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import { textOf, textsOf, wholeOf } from '../../web/fields.ts'
import { counted } from '../../web/words.ts'
import { answerOfCells, cellsAsText } from './cells.ts'

/** What any form about one check of a job sends. */
export interface CheckForm {
  /** The version of the job that the form was made for; 0, which no job has, where it names none. */
  readonly version: number
  readonly check: string
  /** What was typed, trimmed. */
  readonly typed: string
  /** The button that was pressed: `over`, `could-not-tell` or the name of an answer. */
  readonly choice: string
  readonly reason: string
  /** Whether an owner had heard some of what is done for it when it was passed over: `yes`, `no`, or nobody says. */
  readonly begun: string
  /** How warm the part was: a name, or `measured` with `celsius`. */
  readonly warmth: string
  readonly celsius: string
  readonly rpm: string
  /** Sent from the form that asks for a check once more, and not from beside its reading. */
  readonly asTake: boolean
  /** What was typed when this form was sent before and looked like a mistake. */
  readonly kept: string
}

/** Longer than any reason that people write, in characters. */
const longest = 200

export function checkFormFrom(body: unknown): CheckForm {
  return {
    version: wholeOf(textOf(body, 'version')) ?? 0,
    check: textOf(body, 'check'),
    typed: textOf(body, 'typed').trim() || cellsAsText(textsOf(body, 'cell')),
    choice: textOf(body, 'choice'),
    reason: textOf(body, 'reason').trim(),
    begun: textOf(body, 'begun'),
    warmth: textOf(body, 'warmth'),
    celsius: textOf(body, 'celsius').trim(),
    rpm: textOf(body, 'rpm').trim(),
    asTake: textOf(body, 'take') !== '',
    kept: textOf(body, 'kept').trim(),
  }
}

/** The button that takes the readings in all fields, and not an answer. */
export const asRead = 'as-read'

/** Bad input is a value: a sentence that says what to do. */
export type Understood<T> =
  | ({ readonly ok: true } & T)
  | { readonly ok: false; readonly sentence: string }

/** The touches or the answer that a form means, with the text they stand for. */
export function readTouches(
  card: CheckCard,
  { typed, choice }: CheckForm,
): Understood<{ typed: string; touches: Touches }> {
  if (choice === 'could-not-tell') {
    return { ok: true, typed: '', touches: [{ kind: 'could-not-tell' }] }
  }
  if (card.measurand === undefined) return readAnswer(card, choice, typed)
  const text = choice === 'over' ? `${typed} OL`.trim() : typed
  const parsed = parseTouches(text, card.measurand.quantity)
  if (!parsed.ok) return { ok: false, sentence: parsed.problem }
  const { places = 1 } = card.measurand
  if (places > 1 && parsed.touches.length !== places) {
    const count = counted(parsed.touches.length, 'reading')
    return {
      ok: false,
      sentence: `This check reads ${places} places and needs a reading of each: ${count} came. Enter all ${places} in the order of the steps, with spaces between them; OL counts as one.`,
    }
  }
  return { ok: true, typed: text, touches: parsed.touches }
}

function readAnswer({ answers = [], oneWay }: CheckCard, choice: string, typed: string) {
  if (oneWay && choice === asRead) {
    const read = answerOfCells(oneWay, typed)
    if (!read.ok) return read
    return { ok: true, typed, touches: [{ kind: 'answer', answer: read.answer }] } as const
  }
  const chosen = answers.find(({ id }) => id === choice)
  if (chosen === undefined) return { ok: false, sentence: 'Choose one of the answers.' } as const
  const read = oneWay ? typed : ''
  return { ok: true, typed: read, touches: [{ kind: 'answer', answer: chosen.id }] } as const
}

/** Why a check is skipped; without a reason nobody could take it up again later. */
export function readReason({ reason }: CheckForm): Understood<{ reason: string }> {
  if (reason === '') {
    return {
      ok: false,
      sentence: 'Say why this check cannot be made: choose a reason or type one.',
    }
  }
  if (reason.length <= longest) return { ok: true, reason }
  return { ok: false, sentence: `Keep the reason under ${longest} characters.` }
}
