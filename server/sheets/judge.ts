import { doubtIn } from '../jobs/measuring/doubts.ts'
import type { Judged } from '../jobs/measuring/judged.ts'
import { circumstances, measuredReading } from '../jobs/measuring/measured-reading.ts'
import { rangesFor } from '../jobs/measuring/meter-at-hand.ts'
import { type CheckForm, readTouches } from '../jobs/posts/check-form.ts'
import { readManner } from '../jobs/posts/manner.ts'
import type { Manner } from '../jobs/record/events.ts'
import type { DrawnSheet, ReadingCard } from '../knowledge/sheet/sheet.ts'
import type { Circumstances } from '../measure/correct/correct.ts'
import type { Measured } from '../measure/measured.ts'
import type { Touches } from '../measure/reading/reading.ts'
import { settings } from '../measure/reading/settings.ts'
import type { AtHand } from './at-hand.ts'

/** One reading with what it is worth; nothing of it is kept. */
export interface JudgedOnce {
  readonly touches: Touches
  readonly manner: Manner
  readonly measured: Measured
  readonly judged: Judged
  readonly at: Circumstances
  /** A sentence where it tells more of how it was taken than of the part. */
  readonly mistake: string | null
}

/** What was typed, judged; or a sentence that says what to do. */
export function judgeOnce(
  sheet: DrawnSheet,
  card: ReadingCard,
  form: CheckForm,
  { conditions, meter }: AtHand,
): JudgedOnce | string {
  const read = readTouches(card, form)
  if (!read.ok) return read.sentence
  const said = readManner(card, form, conditions)
  if (!said.ok) return said.sentence
  const { touches } = read
  const { manner } = said
  const { instrument, shows } = settings[card.measurand.quantity.setting]
  if (rangesFor(meter, card.measurand).length === 0) {
    return `This ${instrument} has no range for that: choose another one below.`
  }
  const measured = measuredReading(card, { takes: [touches], manner }, meter, conditions)
  if (measured === null || measured.asRead === null) return `Type ${shows}.`
  const { asRead, evidence } = measured
  return {
    touches,
    manner,
    measured,
    judged: {
      reading: asRead === 'OL' ? { kind: 'over' } : { kind: 'value', value: asRead },
      measured,
      likelihoods: evidence,
      furtherTakes: [],
      takes: [],
    },
    at: circumstances(card.measurand, meter, conditions, manner),
    mistake: doubtIn(sheet, card, { typed: read.typed, touches, measured }, meter),
  }
}
