import type { Knowledge } from '../../../server/knowledge/knowledge.ts'
import type { MeterRange } from '../../../server/measure/doubt/meter.ts'
import { parseQuantityText } from '../../../server/measure/reading/parse.ts'
import { between, happens, type Random, spread } from './chance.ts'

/** Who stands at the machine, with what in hand. All figures from memory. */
export interface Person {
  /** Of a brisk pull, warm, rpm. */
  readonly rpm: number
  /** Touches of the probes that are typed where the page welcomes several. */
  readonly touches: number
  /** Chance that a reading is taken at the wrong pin or typed a thousand off. */
  readonly slips: number
  /** Chance that a look or a listening comes out wrong. */
  readonly misses: number
  /** Ω of the two leads together. */
  readonly leads: number
}

export function drawPerson(random: Random): Person {
  return {
    rpm: Math.min(800, Math.max(300, spread(random, 520, 0.2))),
    touches: happens(random, 0.3) ? 3 : 1,
    slips: 0.015,
    misses: 0.02,
    leads: between(random, 0.1, 0.5),
  }
}

/** A meter as it really is: each range off by its own share of what is promised. */
export interface Meter {
  readonly id: string
  /** Shows a lone 1 where others show OL. */
  readonly showsOne: boolean
  readonly ranges: Readonly<
    Record<'resistance' | 'ac-voltage' | 'dc-voltage' | 'capacitance', readonly TrueRange[]>
  >
}

export interface TrueRange extends MeterRange {
  /** What it multiplies with. */
  readonly gain: number
}

const value = (text: string) => parseQuantityText(text)!.value

export function drawMeter({ meters }: Knowledge, id: string, random: Random): Meter {
  const rows = meters.get(id)!.ranges.map((range) => ({
    quantity: range.quantity,
    top: value(range.top),
    digit: value(range.digit),
    percent: range.percent,
    counts: range.counts,
    gain: 1 + (between(random, -0.5, 0.5) * range.percent) / 100,
  }))
  const of = (quantity: string) => rows.filter((row) => row.quantity === quantity)
  return {
    id,
    // Cheap dial meters show over-range that way. Common practice, no published source.
    showsOne: id === 'pocket',
    ranges: {
      resistance: of('resistance'),
      'ac-voltage': of('ac-voltage'),
      'dc-voltage': of('dc-voltage'),
      capacitance: of('capacitance'),
    },
  }
}
