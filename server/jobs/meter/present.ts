import type { Knowledge } from '../../knowledge/knowledge.ts'
import { printValue } from '../../measure/reading/print.ts'
import { meterSettings, type Setting, settings } from '../../measure/reading/settings.ts'
import type { FoundJob } from '../standing/find.ts'
import { upperFirst } from '../words/sentences.ts'
import { type Beside, jobBeside } from './beside.ts'
import type { MeterForm, MeterProblems, RangeRow } from './form.ts'

/** View model of the page on which the meter is chosen and its leads are zeroed. */
export interface MeterPage {
  readonly title: string
  readonly action: string
  readonly version: number
  readonly backHref: string
  /** The check that it was opened from, by what the address asks of it. */
  readonly beside?: Beside
  readonly meters: readonly {
    readonly id: string
    readonly name: string
    readonly about: string
    readonly chosen: boolean
  }[]
  readonly own: {
    readonly chosen: boolean
    readonly name: string
    readonly rows: readonly (RangeRow & { readonly number: number })[]
  }
  readonly settings: readonly { readonly id: string; readonly says: string }[]
  readonly zero: string
  readonly problems: MeterProblems
}

/** Rows to fill in; a hand meter has six ranges of ohms and a few of volts. */
const rowsShown = 10

export function presentMeter(
  knowledge: Knowledge,
  { job }: FoundJob,
  form: MeterForm,
  problems: MeterProblems,
  beside?: Beside,
): MeterPage {
  return {
    title: `Job ${job.id}: meter and leads`,
    action: `/jobs/${job.id}/meter`,
    version: job.version,
    backHref: jobBeside(job, beside),
    ...(beside && { beside }),
    meters: [...knowledge.meters.values()].map(({ id, name, about }) => ({
      id,
      name,
      about,
      chosen: form.meter === id,
    })),
    own: {
      chosen: form.meter === 'own',
      name: form.name,
      rows: filledUp(form.rows).map((row, i) => ({ ...row, number: i + 1 })),
    },
    settings: meterSettings.map((id) => ({ id, says: upperFirst(settings[id].says) })),
    zero: form.zero,
    problems,
  }
}

function filledUp(rows: readonly RangeRow[]): RangeRow[] {
  const missing = Math.max(0, rowsShown - rows.length)
  const empty = { setting: 'resistance', top: '', digit: '', percent: '', counts: '' }
  return [...rows, ...Array.from({ length: missing }, () => empty)]
}

/** The form as the job stands. */
export function formOfMeter({ job, folded }: FoundJob): MeterForm {
  const { choice: meter, zero } = folded.meter
  return {
    version: job.version,
    meter: meter.kind === 'own' ? 'own' : meter.id,
    name: meter.kind === 'own' ? meter.name : '',
    rows:
      meter.kind === 'own' ? meterSettings.flatMap((setting) => rowsOf(meter.ranges, setting)) : [],
    zero: zero === null ? '' : printValue(zero, 'Ω'),
  }
}

function rowsOf(
  ranges: Extract<FoundJob['folded']['meter']['choice'], { kind: 'own' }>['ranges'],
  setting: Setting,
): RangeRow[] {
  const { unit } = settings[setting]
  return ranges[setting].map(({ top, digit, percent, counts }) => ({
    setting,
    top: printValue(top, unit),
    digit: printValue(digit, unit),
    percent: String(percent),
    counts: String(counts),
  }))
}
