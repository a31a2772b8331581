import { type MeterRange, rangeAt } from '../doubt/meter.ts'

/** A step missed by this share of itself is one that was met: 0.3 is not quite six times 0.05 to a computer. */
const rounding = 1e-6

/** The thickest blade that goes into a gap, in the unit of the ranges; 0 where none does, the top where all do. */
export function bladeInto(gap: number, ranges: readonly MeterRange[]): number {
  const { digit, top } = rangeAt(ranges, gap)
  const steps = Math.floor(Math.min(gap, top) / digit + rounding)
  return Number((steps * digit).toPrecision(12))
}

/** How much thicker the next blade is, which does not go in any more. */
export const toNextBlade = (blade: number, ranges: readonly MeterRange[]): number =>
  rangeAt(ranges, blade).digit
