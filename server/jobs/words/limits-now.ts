import type { Measurand } from '../../knowledge/case.ts'
import { limitsAt } from '../../measure/correct/limits-at.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import { printLimits } from '../../measure/reading/print.ts'
import type { Limits } from '../../measure/reading/reading.ts'

/** "310 Ω to 420 Ω", "at least 110 V at 450 rpm": what a good part reads, as its sheet says. */
export function limitsWords({ quantity, limits, rpm }: Measurand): string {
  const over = quantity.overRange === 'in range' ? ', or OL' : ''
  const speed = rpm === undefined ? '' : ` at ${rpm}\u00a0rpm`
  return `${printLimits(limits, quantity.unit)}${over}${speed}`
}

/**
 * What the meter shows of a good part at this temperature, °C: "273 Ω to 370 Ω". Nothing where that is
 * what the sheet says, or where the steps of the check warm the part.
 */
export function limitsNow(measurand: Measurand, celsius: number): string | undefined {
  const { limits, quantity, material, at = assumedForLimits.celsius, warmedTo } = measurand
  if (warmedTo !== undefined) return undefined
  const now = limitsAt(limits, quantity, material, celsius, at)
  const [then, here] = [limits, rounded(now)].map((each) => printLimits(each, quantity.unit))
  return here === then || now === limits ? undefined : here
}

/** To three digits: more would promise more than a thermometer in the open can keep. */
function rounded({ low, high }: Limits): Limits {
  const digits = (value: number) => Number(value.toPrecision(3))
  return {
    ...(low !== undefined && { low: digits(low) }),
    ...(high !== undefined && { high: digits(high) }),
  }
}
