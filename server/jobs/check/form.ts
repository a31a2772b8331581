import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { followsWarmth } from '../../measure/correct/follows-warmth.ts'
import { settings } from '../../measure/reading/settings.ts'
import { rowOf, units } from '../../measure/reading/units.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import { temperatureOf, usualWarmth } from '../measuring/warmth.ts'
import type { Conditions } from '../record/events.ts'
import { canBeMadeAnew } from '../record/fold.ts'
import { hasRun } from '../record/has-run.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { conditionsAt } from '../standing/way/still-hot.ts'
import { readWords } from '../words/reading-words.ts'
import { degrees, lowerFirst } from '../words/sentences.ts'
import { skipReasons } from '../words/skip-reasons.ts'
import { presentCells } from './cells.ts'
import { presentManner } from './manner.ts'
import { meterKeys } from './meter-keys.ts'
import type { ReadingForm } from './view.ts'

/** What stands in the way of a check, as people would put it. */
const skipping = {
  atTheMachine: { summary: 'Cannot do this', reasons: skipReasons },
  asked: {
    summary: 'Nobody to ask',
    reasons: ['The owner is not here', 'The owner does not know'],
  },
}

/** Whether a check is made for the first time, once more, or put right. */
export type Purpose = 'reading' | 'take' | 'correction'

const nouns: Readonly<Record<Purpose, string>> = {
  reading: 'readings',
  take: 'takes',
  correction: 'corrections',
}

const questions: Readonly<Record<Purpose, string>> = {
  reading: 'What came back?',
  take: 'What came back this time?',
  correction: 'What came back?',
}

/** What a check on the page is there for: to be made, made once more, or put right. */
export function purposeOf(input: Standing & Asked, check: string): Purpose {
  const { correcting, take, folded, walk } = input
  const anew = input.check === check && canBeMadeAnew(folded, check)
  if (!folded.readings.has(check) || anew) return 'reading'
  const asks = walk.step.kind === 'ask' && walk.step.proposal.check === check
  return correcting !== check && (take === check || asks) ? 'take' : 'correction'
}

/** The form that takes a reading, a correction of one, or the reason for skipping it. */
export function presentForm(
  input: Standing & Asked,
  card: CheckCard,
  taking: Purpose,
): ReadingForm {
  const { job, folded, judged, kase, asItStands, refused, skipRefused } = input
  const conditions = conditionsAt(asItStands, card, folded.conditions)
  const corrected = taking === 'correction' ? folded.readings.get(card.id) : undefined
  const tried = refused?.check === card.id ? refused : undefined
  const skipped = skipRefused?.check === card.id ? skipRefused : undefined
  const measured = card.measurand?.quantity
  return {
    action: `/jobs/${job.id}/${nouns[taking]}`,
    label: card.measurand
      ? fieldLabel(card.measurand, conditions, folded.readings.get(card.id)?.manner.warmth)
      : questions[taking],
    hint: card.measurand ? hint(card.measurand) : '',
    ...(measured && {
      field: {
        unit: measured.unit,
        ...(measured.overRange && { over: { label: 'OL', more: ', over the range' } }),
        keys: meterKeys(measured),
      },
    }),
    ...presentCells(card, tried?.typed ?? corrected?.typed ?? ''),
    answers: card.answers ?? [],
    typed: tried?.typed ?? corrected?.typed ?? '',
    submit: corrected ? 'Correct' : 'Take it',
    // Made once more, the part is as warm as it was.
    ...(taking !== 'take' &&
      presentManner(card, conditions, {
        manner: folded.readings.get(card.id)?.manner,
        tried,
        hasRun: hasRun(job, kase),
      })),
    ...(tried && { problem: tried.sentence, kept: tried.typed }),
    ...(taking === 'take' && {
      letStand: { action: `/jobs/${job.id}/acceptances`, submit: 'Let it stand as it is' },
    }),
    ...(corrected && {
      corrects: {
        says: `Written down: ${lowerFirst(readWords(card, named(judged, card.id)))}. Nothing is done at the machine for this: only what was written changes.`,
        cancelHref: `/jobs/${job.id}`,
        ...(allowsFurtherTake(kase, card.id) && {
          anew: {
            href: `/jobs/${job.id}?take=${encodeURIComponent(card.id)}`,
            text: 'Make one more take instead',
          },
        }),
      },
    }),
    ...(taking === 'reading' && {
      skip: {
        action: `/jobs/${job.id}/skips`,
        ...(card.asked ? skipping.asked : skipping.atTheMachine),
        reason: skipped?.reason ?? '',
        ...(skipped && { problem: skipped.sentence }),
      },
    }),
  }
}

/**
 * "Reading, in Ω, part at −25 °C": how warm it is taken to be stands there where it matters, so that nobody
 * has to look for it.
 */
export function fieldLabel(
  measurand: Measurand,
  conditions: Conditions,
  warmth = usualWarmth(conditions, measurand),
): string {
  const { quantity, places } = measurand
  const { label } = settings[quantity.setting]
  // A lone degree sign is easily missed.
  const unit = rowOf(quantity.unit).joined ? units[quantity.unit].says : quantity.unit
  const readings = places === undefined ? label : `The ${places} readings`
  if (!followsWarmth(measurand)) return `${readings}, in ${unit}`
  return `${readings}, in ${unit}, part at ${degrees(temperatureOf(warmth, conditions).celsius)}`
}

/** What to type, with examples. */
export function hint({
  quantity,
  places,
  moved,
}: Pick<Measurand, 'quantity' | 'places' | 'moved'>): string {
  const { examples, setting, touches } = quantity
  if (places !== undefined) {
    return `Type all ${places} in the order of the steps, with spaces between them: ${examples.several}. The one that is furthest out counts.`
  }
  return `Type ${settings[setting].shows}: ${examples.all}. Several ${touches.many} in a row are welcome: ${examples.several}.${moved ? ' The highest counts.' : ''}`
}
