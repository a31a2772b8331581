/** A temperature and how far it may be off either way, both in °C (the half-width in K). */
export interface Temperature {
  readonly celsius: number
  readonly halfWidth: number
}

/** Windings are copper. Suppressor caps, carbon leads and contacts are not: they are left as read. */
export type Material = 'copper' | 'not copper'

/** Temperature coefficient of copper's resistance at 20 °C, per K, at constant mass (IEC 60028). */
export const copperAt20 = 0.00393

/** Another library carries 0.00392: the third digit is in doubt by 0.25 %. */
export const copperDoubt = 0.0025 * copperAt20

/** A manual that gives no temperature means a workshop. Common practice. */
export const assumedForLimits: Temperature = { celsius: 20, halfWidth: 5 }

/** Copper would read nothing at this temperature, °C, if the straight line went that far: −234.45. */
export const zeroOfCopper = 20 - 1 / copperAt20

/**
 * What a copper winding that reads R at `celsius` would read at `reference`, in R's unit:
 * R / (1 + a·(T − Tref)) with a = a20/(1 + a20·(Tref − 20)) at Tref, which is
 * R·(234.45 + Tref)/(234.45 + T). Trusted from −40 to 150 °C.
 *
 * @throws RangeError for a temperature at or below −234.45 °C, or one that is no number.
 */
export function toReference(resistance: number, celsius: number, reference: number): number {
  return (resistance * aboveZero(reference)) / aboveZero(celsius)
}

/**
 * How the resistance at the reference answers to each temperature, per K, and to a20, per unit of it:
 * the sensitivity coefficients of JCGM 100, 5.1.3.
 */
export function sensitivities(atReference: number, celsius: number, reference: number) {
  return {
    part: -atReference / aboveZero(celsius),
    limits: atReference / aboveZero(reference),
    // d ln(1 + a20·t)/d a20 = t/(1 + a20·t), and 1 + a20·t = a20·(T + 234.45).
    coefficient:
      (atReference / copperAt20) *
      ((reference - 20) / aboveZero(reference) - (celsius - 20) / aboveZero(celsius)),
  }
}

function aboveZero(celsius: number): number {
  const above = celsius - zeroOfCopper
  if (!(above > 0 && above < Infinity)) throw new RangeError(`no temperature of copper: ${celsius}`)
  return above
}
