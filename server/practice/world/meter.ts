import { named } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { rangesOf, withGauges } from '../../knowledge/meters.ts'
import type { MeterRange } from '../../measure/doubt/meter.ts'
import { bySetting, type Setting } from '../../measure/reading/settings.ts'
import { between, type Random } from './chance.ts'

/** A meter as it really is: each range off by its own share of what is promised. */
export interface Meter {
  readonly id: string
  /** Shows a lone 1 where others show OL. */
  readonly showsOne: boolean
  readonly ranges: Readonly<Record<Setting, readonly TrueRange[]>>
}

export interface TrueRange extends MeterRange {
  /** What it multiplies with. */
  readonly gain: number
}

/** One meter of a class that is in the knowledge. */
export function drawMeter({ meters, tools }: Knowledge, id: string, random: Random): Meter {
  const promised = withGauges(rangesOf(named(meters, id)), tools)
  return {
    id,
    showsOne: false,
    ranges: bySetting((setting) =>
      promised[setting].map((range) => ({
        ...range,
        gain: 1 + (between(random, -0.5, 0.5) * range.percent) / 100,
      })),
    ),
  }
}
