import { type Contribution, rectangular } from '../doubt/budget.ts'

/** Revolutions a minute, and how far they may be off either way. */
export interface Speed {
  readonly rpm: number
  readonly halfWidth: number
}

/** A pull start turns the engine somewhere between these, rpm. Common practice. */
export const pullStart = { slowest: 300, fastest: 800 }
/** A running engine is held at the asked speed by ear, within a fifth. From memory. */
export const byEar = 0.2
/** Where the sheet names no speed, an ordinary pull is meant, and pulls differ. From memory. */
export const pullToPull = 0.15
/** The pulls of one person lie this share apart, either way; so do speeds held by one ear. From memory. */
const samePerson = 0.1

/**
 * A speed that nobody measured and that one person brings to every reading made at it: how fast they
 * pull, and how fast an engine sounds right to them.
 */
export type Unmeasured = 'pull' | 'by ear'

export interface AtLimitsSpeed {
  /** Volts as read times this are volts at the limits' speed. */
  readonly factor: number
  /** Of the factor, a plain ratio. */
  readonly halfWidth: number
  readonly name: string
}

/**
 * EMF is proportional to speed at fixed flux, so volts read at n compare with limits at n0 as V·n0/n.
 *
 * - Speed known: factor n0/n, in doubt by factor·halfWidth/n.
 * - Speed unknown: at a limit for cranking (n0 up to 800 rpm) the pull was anything from 300 to
 *   800 rpm, so the factor is the middle of n0/800 and n0/300, with half the way between them as
 *   doubt. Above that the engine ran, and was held at n0 within a fifth.
 * - Limits without a speed mean an ordinary pull: factor 1, in doubt by 15 %.
 *
 * @param place what if an unmeasured speed were known: where between the fastest (0) and the slowest (1)
 * it lies; what is left in doubt then is how far the pulls of one person lie apart. Left out: anywhere.
 * @throws RangeError for a speed of 0 or less.
 */
export function toLimitsSpeed(
  limits: number | undefined,
  speed: Speed | undefined,
  place?: number,
): AtLimitsSpeed {
  if (!((limits ?? 1) > 0 && (speed?.rpm ?? 1) > 0)) throw new RangeError('speed must be above 0')
  if (limits !== undefined && speed !== undefined) {
    const factor = limits / speed.rpm
    return { factor, halfWidth: (factor * speed.halfWidth) / speed.rpm, name: 'speed' }
  }
  const { factor: middle, halfWidth, name } = spanOf(limits)
  if (place === undefined) return { factor: middle, halfWidth, name }
  const factor = middle + (2 * place - 1) * halfWidth
  return { factor, halfWidth: factor * samePerson, name }
}

/** Which unmeasured speed volts were read at; null where it was measured. Arguments as of `toLimitsSpeed`. */
export function unmeasuredSpeed(
  limits: number | undefined,
  speed: Speed | undefined,
): Unmeasured | null {
  return limits !== undefined && speed !== undefined ? null : spanOf(limits).of
}

function spanOf(limits: number | undefined): AtLimitsSpeed & { readonly of: Unmeasured } {
  if (limits === undefined) {
    return { of: 'pull', factor: 1, halfWidth: pullToPull, name: 'pulls differ' }
  }
  if (limits > pullStart.fastest) {
    return { of: 'by ear', factor: 1, halfWidth: byEar, name: 'speed by ear' }
  }
  const [least, most] = [limits / pullStart.fastest, limits / pullStart.slowest]
  return {
    of: 'pull',
    factor: (least + most) / 2,
    halfWidth: (most - least) / 2,
    name: 'speed not known',
  }
}

/** @param volts before they are brought to the limits' speed */
export function speedContribution({ halfWidth, name }: AtLimitsSpeed, volts: number): Contribution {
  return rectangular({ name, what: 'speed', unit: '', halfWidth, sensitivity: volts })
}
