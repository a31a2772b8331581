import type { Limits } from '../../../server/measure/reading/reading.ts'

/**
 * Guard bands in common use, as multiples of the expanded uncertainty U = 2u: ILAC-G8:09/2019, table 1
 * (0 and 1 confirmed, the others from memory). On the edge of its zone, a rule accepts a bad part with
 * at most Φ(−2·factor).
 */
export const guardFactors = {
  'six sigma': 3,
  'three sigma': 1.5,
  'ILAC-G8': 1,
  'ISO 14253-1': 0.83,
  'simple acceptance': 0,
} as const

export type Proven = 'conformity proven' | 'non-conformity proven' | 'neither proven'

/**
 * ISO 14253-1: inside both limits by the guard band conformity is proven, outside by it
 * non-conformity is, and in between neither is. A value on the edge of a zone belongs to it.
 *
 * @param guard in the value's unit, 0 or more
 */
export function prove(value: number, limits: Limits, guard: number): Proven {
  const zone = acceptance(limits, guard)
  if (zone && value >= (zone.low ?? -Infinity) && value <= (zone.high ?? Infinity)) {
    return 'conformity proven'
  }
  const { low = -Infinity, high = Infinity } = limits
  return value <= low - guard || value >= high + guard ? 'non-conformity proven' : 'neither proven'
}

/** The limits narrowed by the guard band: values that prove conformity. Null if it leaves nothing. */
export function acceptance({ low, high }: Limits, guard: number): Limits | null {
  if (!(guard >= 0)) throw new RangeError(`no guard band: ${guard}`)
  const zone = {
    ...(low !== undefined && { low: low + guard }),
    ...(high !== undefined && { high: high - guard }),
  }
  return (zone.low ?? -Infinity) <= (zone.high ?? Infinity) ? zone : null
}
