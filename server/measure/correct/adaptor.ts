import { type Contribution, rectangular } from '../doubt/budget.ts'
import type { Limits } from '../reading/reading.ts'

/** A passive peak-hold adaptor: a diode that charges a capacitor, read by a DC voltmeter. */
export interface Adaptor {
  /** What the diode keeps for itself, V, and how far that may be off. */
  readonly drop: { readonly volts: number; readonly halfWidth: number }
  /** Hold time R·C, s: capacitor times its bleed and the meter in parallel. */
  readonly hold: number
  /** Time from pulse to pulse T, s, and how far that may be off. */
  readonly period: { readonly seconds: number; readonly halfWidth: number }
}

/**
 * Silicon keeps 0.4 to 0.7 V. 1 µF, 1 MΩ and a 10 MΩ meter hold 0.9 s. A flywheel at 500 rpm gives one
 * to six pulses a turn. From memory.
 */
export const commonAdaptor: Adaptor = {
  drop: { volts: 0.55, halfWidth: 0.15 },
  hold: 0.9,
  period: { seconds: 0.07, halfWidth: 0.05 },
}

/** Below this many volts the diode's share rules, and a passive adaptor must not judge. */
export const leastVolts = 5

/** How far the formula is off, from the circuit simulator, by true peak and by hold time in periods. */
const formDoubt = [
  { from: 20, share: 0.01 },
  { from: leastVolts, share: 0.025 },
  { from: 0, share: 0.13 },
]
const shortHold = { periods: 7, share: 0.035 }

/**
 * The peak that made the adaptor show `reading`: V = reading/(1 − T/(2RC)) + Vd, the mean of a capacitor
 * that loses T/(RC) of itself from pulse to pulse, plus the diode's drop. Trusted within 1 % from 20 V
 * and RC ≥ 7 T, 2.5 % from 5 V; below that it is worth nothing (`canJudge`).
 *
 * @throws RangeError for a hold time that is not longer than half a period
 */
export function truePeak(
  reading: number,
  { drop, hold, period }: Adaptor,
): { readonly volts: number; readonly kept: number; readonly contributions: Contribution[] } {
  const kept = 1 - period.seconds / (2 * hold)
  if (!(kept > 0)) throw new RangeError(`an adaptor must hold longer than ${period.seconds / 2} s`)
  const volts = reading / kept + drop.volts
  const byVolts = formDoubt.find(({ from }) => volts >= from)?.share ?? 1
  const share = Math.max(byVolts, hold < shortHold.periods * period.seconds ? shortHold.share : 0)
  const line = { what: 'adaptor' } as const
  return {
    volts,
    kept,
    contributions: [
      rectangular({
        ...line,
        name: 'diode drop',
        unit: 'V',
        halfWidth: drop.halfWidth,
        sensitivity: 1,
      }),
      rectangular({
        ...line,
        name: 'time between pulses',
        unit: 's',
        halfWidth: period.halfWidth,
        sensitivity: reading / (kept * kept * 2 * hold),
      }),
      rectangular({
        ...line,
        name: 'formula of the adaptor',
        unit: '',
        halfWidth: share,
        sensitivity: volts,
      }),
    ],
  }
}

/** Whether a passive adaptor may judge these limits: not where one of them lies below 5 V. */
export function canJudge({ low, high }: Limits): boolean {
  return Math.min(low ?? Infinity, high ?? Infinity) >= leastVolts
}
