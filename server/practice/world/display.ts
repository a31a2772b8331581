import { bladeInto } from '../../measure/correct/blades.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import { between, type Random } from './chance.ts'
import type { Meter, TrueRange } from './meter.ts'

/** What a meter set to `setting` shows, as one types it off the display: `365.2`, `9.34k`, `1.2M`, `OL`. */
export function shown(
  meter: Meter,
  setting: keyof Meter['ranges'],
  value: number,
  random: Random,
): string {
  const range = rangeFor(meter.ranges[setting], value)
  // Drawn in any case, so that what comes next does not depend on it.
  const wandering = between(random, -1, 1)
  if (range === null) return meter.showsOne ? '1' : 'OL'
  const { digit, counts, gain } = range
  const counted = Math.max(0, Math.round((value * gain) / digit + (wandering * counts) / 4))
  return asTyped(counted * digit, digit)
}

/** The same of volts, that nobody reads on a range which is too small: never over the highest range. */
export function shownVolts(
  meter: Meter,
  setting: 'ac-voltage' | 'dc-voltage',
  value: number,
  random: Random,
): string {
  const most = Math.max(...meter.ranges[setting].map(({ top, gain }) => top / gain))
  return shown(meter, setting, Math.min(value, 0.99 * most), random)
}

/** What a gauge shows, that nobody reads beyond its end: the thickest blade that goes in, or its pointer. */
export function shownByGauge(
  meter: Meter,
  { setting, corrections }: Pick<Quantity, 'setting' | 'corrections'>,
  value: number,
  random: Random,
): string {
  const ranges = meter.ranges[setting]
  const most = Math.max(...ranges.map(({ top, gain }) => top / gain))
  if (!corrections.includes('next blade')) {
    return shown(meter, setting, Math.min(value, 0.99 * most), random)
  }
  return String(bladeInto(Math.min(value, most), ranges))
}

function rangeFor(ranges: readonly TrueRange[], value: number): TrueRange | null {
  const holding = ranges.filter(({ top, gain }) => value * gain <= top)
  return holding.reduce<TrueRange | null>((a, b) => (a === null || b.top < a.top ? b : a), null)
}

/** With the prefix that the display shows beside the number. */
function asTyped(value: number, digit: number): string {
  const prefixes = [
    { from: 1000, by: 1e6, says: 'M' },
    { from: 1, by: 1e3, says: 'k' },
  ]
  // A range of kΩ counts in tens of ohms or ones of 4000; its last digit tells which prefix it shows.
  const prefix = digit >= 1 ? prefixes.find(({ from }) => digit >= from) : undefined
  const by = prefix?.by ?? 1
  const decimals = Math.max(0, Math.round(-Math.log10(digit / by)))
  return `${(value / by).toFixed(decimals)}${prefix?.says ?? ''}`
}
