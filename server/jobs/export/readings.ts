import type { CheckCard } from '../../knowledge/case.ts'
import { followsWarmth } from '../../measure/correct/follows-warmth.ts'
import { printLimits } from '../../measure/reading/print.ts'
import { byMeter } from '../../measure/reading/settings.ts'
import type { Judged } from '../measuring/judged.ts'
import { temperatureOf } from '../measuring/warmth.ts'
import type { StoredJob } from '../record/events.ts'
import type { Recorded } from '../record/fold.ts'
import { overRows } from '../standing/over-rows.ts'
import type { ReadJob } from '../standing/standing.ts'
import { takerOf } from '../words/names.ts'
import { readWords } from '../words/reading-words.ts'
import { upperFirst } from '../words/sentences.ts'
import { type Changeable, withChanges, withdrawn } from './changed.ts'

/** One reading as data: numbers in SI units without prefix. */
export interface ExportedReading extends Changeable {
  readonly check: string
  /** The check in words; empty where the trees do not have it any more. */
  readonly title: string
  readonly part: string
  /** What was measured; empty of a look or a question. */
  readonly quantity: string
  readonly at: string
  readonly unit: string
  readonly low: number | null
  readonly high: number | null
  readonly limits: string
  readonly read: string
  /** As compared with the limits, and the half-width that holds the true value with 95 %. */
  readonly corrected: number | null
  readonly expanded: number | null
  readonly within: number | null
  readonly takes: number
  readonly state: string
  /** Why it was left out; empty where it was not. */
  readonly leftOut: string
  /** As somebody typed it. */
  readonly typed: string
  /** When, ISO 8601 in UTC; empty where it was not read. */
  readonly readAt: string
  /** "Ada Quill", "the owner, by phone"; empty where nobody is named. */
  readonly takenBy: string
  /** °C, by then; null where it was not read. */
  readonly air: number | null
  /** °C, as it was said to be; null where the reading does not follow it. */
  readonly partTemperature: number | null
  /** The meter that it is judged with; empty where none reads it. */
  readonly meter: string
}

/**
 * The readings of a job that stand, the checks left out, and what was withdrawn, each in the order in which it was made; of
 * a check-over every reading that it asks for, and what was withdrawn.
 */
export function exportedReadings(input: ReadJob): readonly ExportedReading[] {
  const { kase, job } = input
  return withChanges(
    standingRows(input),
    job,
    (check) => kase.checks.get(check),
    ({ check, before }) => ({
      ...rowOf(input, check, kase.checks.get(check), undefined, withdrawn, ''),
      ...asRecorded(before),
      ...howRead(input, kase.checks.get(check), before),
    }),
  )
}

function standingRows(input: ReadJob): readonly ExportedReading[] {
  const { folded, judged, kase } = input
  if (folded.opened.over !== undefined) {
    return overRows(input).map(({ card, judged, state, skipped = '' }) =>
      rowOf(input, card.id, card, judged, state, skipped),
    )
  }
  const made = [...judged].map(([check, taken]) => {
    const card = kase.checks.get(check)
    return rowOf(input, check, card, taken, stateOf(taken), '')
  })
  const leftOut = [...folded.skipped].map(([check, reason]) =>
    rowOf(input, check, kase.checks.get(check), undefined, 'left out', reason),
  )
  return [...made, ...leftOut]
}

function stateOf({ measured, reading }: Judged): string {
  if (reading.kind === 'could-not-tell') return 'could not tell'
  if (measured === null) return reading.kind === 'answer' ? 'answered' : 'not judged'
  return stateWords[measured.decision]
}

/** The same words as of a check-over. */
const stateWords = { conforms: 'good', 'does not conform': 'bad', undecided: 'unsure' } as const

function rowOf(
  input: ReadJob,
  check: string,
  card: CheckCard | undefined,
  judged: Judged | undefined,
  state: string,
  leftOut: string,
): ExportedReading {
  const { kase, folded } = input
  const by = card?.measurand
  const measured = judged?.measured
  const recorded = folded.readings.get(check)
  return {
    check,
    title: upperFirst(card?.title ?? ''),
    part: kase.parts.get(card?.part ?? '')?.name ?? '',
    quantity: by?.quantity.name ?? '',
    at: card?.spot?.says ?? '',
    unit: by?.quantity.unit ?? '',
    low: by?.limits.low ?? null,
    high: by?.limits.high ?? null,
    limits: by ? printLimits(by.limits, by.quantity.unit) : '',
    read: card && judged ? readWords(card, judged) : '',
    corrected: figure(measured?.corrected),
    expanded: figure(measured?.budget?.expanded),
    within: figure(measured?.conformance.within),
    state,
    leftOut,
    ...asRecorded(recorded),
    ...howRead(input, card, recorded),
  }
}

/** How warm it was, and what it was read with. */
function howRead(
  { meter }: Pick<ReadJob, 'meter'>,
  card: CheckCard | undefined,
  recorded: Recorded | undefined,
): Pick<ExportedReading, 'air' | 'partTemperature' | 'meter'> {
  const by = card?.measurand
  if (recorded === undefined) return { air: null, partTemperature: null, meter: '' }
  const { manner, conditions } = recorded
  return {
    air: figure(conditions.air),
    partTemperature:
      by && followsWarmth(by) ? figure(temperatureOf(manner.warmth, conditions).celsius) : null,
    meter: by && byMeter(by.quantity.setting) ? meter.name : '',
  }
}

/** Six digits are more than any meter has, and no more are printed. */
const figure = (value: number | null | undefined): number | null =>
  value == null ? null : Number(value.toPrecision(6))

function asRecorded(recorded: Recorded | undefined) {
  return {
    takes: recorded?.takes.length ?? 0,
    typed: recorded?.typed ?? '',
    was: '',
    changedAt: '',
    readAt: recorded?.at.toISOString() ?? '',
    takenBy: recorded === undefined ? '' : takerOf(recorded),
  }
}

/** A job whose machine or complaint left the trees: what was typed is there, and worth nothing by itself. */
export function unjudgedReadings(
  job: Pick<StoredJob, 'events'>,
  readings: ReadonlyMap<string, Recorded>,
): readonly ExportedReading[] {
  return withChanges(
    [...readings].map(([check, recorded]) => unjudgedRow(check, recorded, 'not judged')),
    job,
    () => undefined,
    ({ check, before }) => unjudgedRow(check, before, withdrawn),
  )
}

function unjudgedRow(check: string, recorded: Recorded, state: string): ExportedReading {
  return {
    ...{ check, title: '', part: '', quantity: '', at: '' },
    ...{ unit: '', low: null, high: null, limits: '' },
    ...{ read: '', corrected: null, expanded: null, within: null },
    ...{ state, leftOut: '' },
    ...asRecorded(recorded),
    ...{ air: figure(recorded.conditions.air), partTemperature: null, meter: '' },
  }
}
