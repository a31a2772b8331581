import type { Estimate } from '../../../measure/correct/shared-path.ts'
import type { Read } from './types.ts'

/** As the meter showed it, with the doubt of the meter and the touches alone: leads go out again. */
export function asRead({ measured }: Read): Estimate {
  const own = (measured.budget?.lines ?? []).filter(
    ({ what }) => what === 'meter' || what === 'touches',
  )
  return { value: measured.asRead as number, u: Math.hypot(...own.map(({ u }) => u)) }
}

/** As compared with the limits, but for the temperature, which two twins share: two pulls differ. */
export function estimate({ measured }: Read): Estimate {
  const { corrected, budget, steps } = measured
  if (corrected === null || budget === null) return { value: 0, u: 0 }
  const cooled = steps.find(({ what }) => what === 'temperature')?.amount ?? 1
  const own = budget.lines.filter(({ what }) => what !== 'temperature')
  return {
    value: corrected * cooled,
    u: Math.hypot(...own.map(({ u, sensitivity }) => u * sensitivity * cooled)),
  }
}
