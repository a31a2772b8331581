/** A crank with its connecting rod, both in mm. */
export interface Crank {
  readonly stroke: number
  /** From the middle of its small end to that of its big one. */
  readonly rod: number
}

/**
 * How far the piston stands below the top of its stroke, in mm, with the crankshaft at an angle before or behind it:
 * s = r·(1 − cos φ) + l − √(l² − r²·sin² φ), with r half the stroke and l the rod. Exact for a crank whose cylinder
 * is not offset (slider-crank, as in Taylor, The Internal-Combustion Engine in Theory and Practice; from memory).
 *
 * @param degrees 0 to 180
 * @throws RangeError for an angle beyond that, and for a rod that is no longer than half the stroke
 */
export function pistonTravel(degrees: number, crank: Crank): number {
  const r = throwOf(crank)
  if (!(degrees >= 0 && degrees <= 180)) throw new RangeError(`no angle of a crank: ${degrees}`)
  const angle = (degrees * Math.PI) / 180
  return (
    r * (1 - Math.cos(angle)) + crank.rod - Math.sqrt(crank.rod ** 2 - (r * Math.sin(angle)) ** 2)
  )
}

/**
 * The way back, in degrees: the pin lies x = r + l − s from the middle of the crankshaft, and by the law of cosines
 * cos φ = (x² + r² − l²)/(2·x·r).
 *
 * @param travel 0 to the stroke, mm
 * @throws RangeError for a travel beyond that, and for a rod that is no longer than half the stroke
 */
export function crankAngle(travel: number, crank: Crank): number {
  const r = throwOf(crank)
  if (!(travel >= 0 && travel <= crank.stroke)) throw new RangeError(`no travel in it: ${travel}`)
  const x = r + crank.rod - travel
  const cosine = (x * x + r * r - crank.rod ** 2) / (2 * x * r)
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI
}

function throwOf({ stroke, rod }: Crank): number {
  if (!(stroke > 0 && rod > stroke / 2)) throw new RangeError(`no crank: ${stroke} with ${rod}`)
  return stroke / 2
}
