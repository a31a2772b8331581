import { printLimits } from '../../measure/reading/print.ts'
import { overRows } from '../standing/over-rows.ts'
import type { Standing } from '../standing/standing.ts'
import { readWords } from '../words/reading-words.ts'

/** One reading of a check-over as data: numbers in SI units without prefix. */
export interface ExportedReading {
  readonly check: string
  readonly part: string
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
}

/** Every reading of a check-over, in the order in which they are made. */
export function exportedReadings(input: Standing): readonly ExportedReading[] {
  return overRows(input).map(({ card, judged, state, skipped = '' }) => {
    const { limits, quantity } = card.measurand
    const measured = judged?.measured
    return {
      check: card.id,
      part: input.kase.parts.get(card.part ?? '')?.name ?? '',
      quantity: quantity.name,
      at: card.spot?.says ?? '',
      unit: quantity.unit,
      low: limits.low ?? null,
      high: limits.high ?? null,
      limits: printLimits(limits, quantity.unit),
      read: judged ? readWords(card, judged) : '',
      corrected: measured?.corrected ?? null,
      expanded: measured?.budget?.expanded ?? null,
      within: measured?.conformance.within ?? null,
      takes: input.folded.readings.get(card.id)?.takes.length ?? 0,
      state,
      leftOut: skipped,
    }
  })
}

/** As RFC 4180 has it: a line for the names, quotes where a field needs them, CRLF at each end. */
export function asCsv(rows: readonly ExportedReading[]): string {
  const [first] = rows
  if (first === undefined) return ''
  const names = Object.keys(first) as (keyof ExportedReading)[]
  const field = (value: string | number | null) => {
    const text = value === null ? '' : String(value).replaceAll('\u00a0', ' ')
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
  }
  const lines = [names, ...rows.map((row) => names.map((name) => row[name]))]
  return lines.map((line) => `${line.map(field).join(',')}\r\n`).join('')
}
