import { limitsScale } from '../../drawings/limits-scale.ts'
import type { Measurand } from '../../knowledge/case.ts'
import type { Circumstances } from '../../measure/correct/correct.ts'
import type { Measured } from '../../measure/measured.ts'
import { printLimits, printValue } from '../../measure/reading/print.ts'
import { degrees } from '../words/sentences.ts'
import { comparedWords } from './corrected.ts'

/** Limits, reading and corrected reading on one scale, ready to print; none where nothing was read. */
export function presentScale(
  id: string,
  measured: Measured,
  { limits, quantity }: Measurand,
  at: Circumstances,
): string | undefined {
  const { asRead, corrected, budget } = measured
  if (asRead === null) return undefined
  const { unit } = quantity
  const shown = asRead === 'OL' ? 'OL' : printValue(asRead, unit)
  const within = `${printLimits(limits, unit)}`
  const compared = `${comparedWords(measured, unit)}${underWhat(measured, at)}`
  return limitsScale({
    id,
    title: `${quantity.name} on a scale with its limits`.replace(/^./, (first) =>
      first.toUpperCase(),
    ),
    says: [
      `Limits: ${within}.`,
      `As read: ${shown}${asRead === 'OL' ? ', beyond the right end' : ''}.`,
      ...(corrected === null ? [] : [`Corrected, with 95 % of its uncertainty: ${compared}.`]),
    ].join(' '),
    limits: { ...limits, label: `limits ${within}` },
    read: { at: asRead, label: `as read ${shown}` },
    ...(corrected !== null &&
      budget !== null && {
        corrected: { at: corrected, halfWidth: budget.expanded, label: compared },
      }),
  })
}

/** " at 20 °C", " at 400 rpm": what the corrected value holds at, where it was corrected for that. */
function underWhat({ steps }: Measured, at: Circumstances): string {
  if (steps.some(({ what }) => what === 'temperature')) {
    return ` at ${degrees(at.limitsTemperature.celsius)}`
  }
  if (steps.some(({ what }) => what === 'speed')) return ` at ${at.limitsRpm}\u00a0rpm`
  return ''
}
