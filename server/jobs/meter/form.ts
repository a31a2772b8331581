import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Ranges } from '../../knowledge/meters.ts'
import type { MeterRange } from '../../measure/doubt/meter.ts'
import { parseQuantityText } from '../../measure/reading/parse.ts'
import { bySetting, meterSettings, type Setting, settings } from '../../measure/reading/settings.ts'
import { numberIn, textOf, textsOf, wholeOf } from '../../web/fields.ts'
import { readZero } from '../posts/zero.ts'
import type { JobEvent } from '../record/events.ts'

/** What the page of the meter and its leads sends, as text. */
export interface MeterForm {
  readonly version: number
  /** Name of a class, or `own`. */
  readonly meter: string
  readonly name: string
  readonly rows: readonly RangeRow[]
  /** Ω shown with the probes held together; empty where they were not. */
  readonly zero: string
}

/** One range of somebody's own meter: "400 Ω", "0.1 Ω", "0.8", "4". */
export interface RangeRow {
  readonly setting: string
  readonly top: string
  readonly digit: string
  readonly percent: string
  readonly counts: string
}

export function meterFormFrom(body: unknown): MeterForm {
  const column = (name: string) => textsOf(body, name).map((text) => text.trim())
  const [setting, top, digit] = [column('setting'), column('top'), column('digit')]
  const [percent, counts] = [column('percent'), column('counts')]
  return {
    version: wholeOf(textOf(body, 'version')) ?? 0,
    meter: textOf(body, 'meter'),
    name: textOf(body, 'name').trim(),
    rows: setting.map((each, i) => ({
      setting: each,
      top: top[i] ?? '',
      digit: digit[i] ?? '',
      percent: percent[i] ?? '',
      counts: counts[i] ?? '',
    })),
    zero: textOf(body, 'zero').trim(),
  }
}

export type MeterProblems = Readonly<Partial<Record<'meter' | 'name' | 'rows' | 'zero', string>>>
export type AcceptedMeter =
  | { readonly ok: true; readonly event: Extract<JobEvent, { kind: 'meter' }> }
  | { readonly ok: false; readonly problems: MeterProblems }

/** Longer than any name of a meter, in characters. */
const longestName = 80

/** Turns the form into an event, or says what is wrong, one sentence a part of the form. */
export function acceptMeter(knowledge: Knowledge, form: MeterForm): AcceptedMeter {
  const zero = readZero(form.zero)
  const own = form.meter === 'own' ? readRanges(form.rows) : null
  const problems: MeterProblems = {
    ...(own === null && !knowledge.meters.has(form.meter) && { meter: 'Choose a meter.' }),
    ...(form.name.length > longestName && { name: `Keep the name to ${longestName} characters.` }),
    ...(typeof own === 'string' && { rows: own }),
    ...(typeof zero === 'string' && { zero }),
  }
  if (Object.keys(problems).length > 0) return { ok: false, problems }
  const meter =
    own === null
      ? ({ kind: 'class', id: form.meter } as const)
      : ({ kind: 'own', name: form.name || 'own meter', ranges: own as Ranges } as const)
  return { ok: true, event: { kind: 'meter', meter, zero: zero as number | null } }
}

function readRanges(rows: readonly RangeRow[]): Ranges | string {
  const filled = rows.filter(({ top, digit }) => top !== '' || digit !== '')
  if (filled.length === 0) {
    return 'Enter at least one range of your meter: its top, its last digit, and its accuracy.'
  }
  const ranges = bySetting((): MeterRange[] => [])
  for (const row of filled) {
    const setting = meterSettings.find((name) => name === row.setting)
    const range = setting && readRange(row, setting)
    if (!setting || typeof range !== 'object') {
      const where = [row.top, row.digit].filter(Boolean).join(', ')
      return `In the range ${where}: ${range ?? 'choose what it measures.'}`
    }
    ranges[setting].push(range)
  }
  return ranges
}

function readRange(
  { top, digit, percent, counts }: RangeRow,
  setting: Setting,
): MeterRange | string {
  const { unit } = settings[setting]
  const amount = (text: string) => parseQuantityText(text) ?? parseQuantityText(`${text} ${unit}`)
  const [highest, last] = [amount(top), amount(digit)]
  if (highest?.unit !== unit) return `write the top with its unit, like 400 ${unit}.`
  if (last?.unit !== unit) return `write the last digit with its unit, like 0.1 ${unit}.`
  if (!(last.value > 0 && last.value < highest.value)) {
    return 'the last digit must be smaller than the top.'
  }
  const [share, count] = [numberIn(percent.replace('%', '')), numberIn(counts)]
  if (share === null || share < 0 || share > 20) {
    return 'write the accuracy in percent of the reading, from 0 to 20.'
  }
  if (count === null || count < 0 || count > 100) {
    return 'write the counts that come on top, from 0 to 100.'
  }
  return { top: highest.value, digit: last.value, percent: share, counts: count }
}
