import { type Contribution, rectangular } from '../doubt/budget.ts'
import { accuracy, flickerOf, type MeterRange, rangeAt } from '../doubt/meter.ts'

/**
 * Test leads have 0.1 to 0.5 Ω of their own (common practice; 0.2 Ω and 0.2 to 0.5 Ω confirmed as
 * typical in two meter makers' notes). Unless they are zeroed that much is taken off: the middle, with
 * half the range as doubt.
 */
export const unzeroed = { ohms: 0.3, halfWidth: 0.2 }

export interface Leads {
  /** To take off the reading, Ω. */
  readonly ohms: number
  readonly contribution: Contribution
}

/**
 * What the leads put into a reading of ohms.
 *
 * A zero is itself a reading, with the accuracy of the range that holds it. On the range that holds
 * the part too, the meter's offset is in both and goes out in the difference (correlated inputs,
 * JCGM 100, 5.2): it is counted once, with the reading, and the zero adds the flicker of its last digit.
 * Two independent accuracies would be safer still, but would make zeroed leads worse than unzeroed ones.
 *
 * @param zero Ω shown with the probes held together, 0 where a relative key took it off; left out
 * where nobody looked
 */
export function leads(
  zero: number | undefined,
  reading: number,
  ranges: readonly MeterRange[],
): Leads {
  const line = { what: 'leads', unit: 'Ω', sensitivity: -1 } as const
  if (zero === undefined) {
    const { ohms, halfWidth } = unzeroed
    return { ohms, contribution: rectangular({ ...line, name: 'leads not zeroed', halfWidth }) }
  }
  const range = rangeAt(ranges, zero)
  const halfWidth = range === rangeAt(ranges, reading) ? flickerOf(range) : accuracy(range, zero)
  return {
    ohms: zero,
    contribution: rectangular({ ...line, name: 'zero of the leads', halfWidth }),
  }
}
