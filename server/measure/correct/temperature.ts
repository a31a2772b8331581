/** A temperature and how far it may be off either way, both in °C (the half-width in K). */
export interface Temperature {
  readonly celsius: number
  readonly halfWidth: number
}

/**
 * Windings are copper. Suppressor caps, carbon leads and contacts are not: they are left as read. Of a
 * path through both, the share of its resistance that is copper, at the limits' temperature, 0 to 1.
 */
export type Material = 'copper' | 'not copper' | { readonly copper: number }

/** The share of the resistance that is copper, 0 to 1. */
export function copperShare(material: Material): number {
  if (material === 'copper') return 1
  return material === 'not copper' ? 0 : material.copper
}

/** How far such a share may be off: winding and cap each have their own tolerance. From memory. */
export const shareDoubt = 0.06

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
 * R·(234.45 + Tref)/(234.45 + T). Of a path with the share s of copper, R / (s·k + 1 − s), where
 * k = (234.45 + T)/(234.45 + Tref) is what copper would read more. Trusted from −40 to 150 °C.
 *
 * @param share of the resistance that is copper at `reference`, 0 to 1
 * @throws RangeError for a temperature at or below −234.45 °C, or one that is no number.
 */
export function toReference(
  resistance: number,
  celsius: number,
  reference: number,
  share = 1,
): number {
  return resistance / grown(celsius, reference, share)
}

/**
 * What a path that reads R at `reference` would read at `celsius`: the way back from `toReference`.
 *
 * @param share of the resistance that is copper at `reference`, 0 to 1
 * @throws RangeError as `toReference` does.
 */
export function fromReference(
  resistance: number,
  celsius: number,
  reference: number,
  share = 1,
): number {
  return resistance * grown(celsius, reference, share)
}

/** What a path reads at `celsius`, over what it reads at `reference`. */
function grown(celsius: number, reference: number, share: number): number {
  return 1 + share * (aboveZero(celsius) / aboveZero(reference) - 1)
}

/**
 * How the resistance at the reference answers to each temperature, per K, to a20, per unit of it, and to
 * the share of copper: the sensitivity coefficients of JCGM 100, 5.1.3.
 */
export function sensitivities(atReference: number, celsius: number, reference: number, share = 1) {
  const whole = grown(celsius, reference, share)
  const more = aboveZero(celsius) / aboveZero(reference)
  // Of any relative change of the copper, the part that reaches the whole.
  const reaches = (share * more) / whole
  return {
    part: (-atReference / aboveZero(celsius)) * reaches,
    limits: (atReference / aboveZero(reference)) * reaches,
    // d ln(1 + a20·t)/d a20 = t/(1 + a20·t), and 1 + a20·t = a20·(T + 234.45).
    coefficient:
      (atReference / copperAt20) *
      ((reference - 20) / aboveZero(reference) - (celsius - 20) / aboveZero(celsius)) *
      reaches,
    share: (-atReference * (more - 1)) / whole,
  }
}

function aboveZero(celsius: number): number {
  const above = celsius - zeroOfCopper
  if (!(above > 0 && above < Infinity)) throw new RangeError(`no temperature of copper: ${celsius}`)
  return above
}
