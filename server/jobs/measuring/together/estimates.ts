import type { Estimate } from '../../../measure/correct/shared-path.ts'
import type { Read } from './types.ts'

/** As the meter showed it, with the doubt of the meter and the touches alone: leads go out again. */
export function asRead({ measured }: Read): Estimate {
  const own = (measured.budget?.lines ?? []).filter(
    ({ what }) => what === 'meter' || what === 'touches',
  )
  return { value: measured.asRead as number, u: Math.hypot(...own.map(({ u }) => u)) }
}

/** Volts as compared with the limits: two pulls differ. Ohms without the leads: both are equally warm. */
export function estimate({ card, measured }: Read): Estimate {
  const { corrected, budget, steps } = measured
  if (corrected === null || budget === null) return { value: 0, u: 0 }
  if (card.measured!.quantity.unit === 'V') return { value: corrected, u: budget.u }
  const without = steps.find(({ what }) => what === 'leads')?.result
  const own = budget.lines.filter(({ what }) => what !== 'temperature')
  return {
    value: without ?? (measured.asRead as number),
    u: Math.hypot(...own.map(({ u }) => u)),
  }
}
