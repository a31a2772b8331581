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
 * @throws RangeError for a speed of 0 or less.
 */
export function toLimitsSpeed(limits: number | undefined, speed: Speed | undefined): AtLimitsSpeed {
  if (!((limits ?? 1) > 0 && (speed?.rpm ?? 1) > 0)) throw new RangeError('speed must be above 0')
  if (limits === undefined) return { factor: 1, halfWidth: pullToPull, name: 'pulls differ' }
  if (speed !== undefined) {
    const factor = limits / speed.rpm
    return { factor, halfWidth: (factor * speed.halfWidth) / speed.rpm, name: 'speed' }
  }
  if (limits > pullStart.fastest) return { factor: 1, halfWidth: byEar, name: 'speed by ear' }
  const [least, most] = [limits / pullStart.fastest, limits / pullStart.slowest]
  return { factor: (least + most) / 2, halfWidth: (most - least) / 2, name: 'speed not known' }
}

/** @param volts before they are brought to the limits' speed */
export function speedContribution({ halfWidth, name }: AtLimitsSpeed, volts: number): Contribution {
  return rectangular({ name, what: 'speed', unit: '', halfWidth, sensitivity: volts })
}
