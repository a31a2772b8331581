import type { Does } from '../../knowledge/schema/wiring/does.ts'
import { parseQuantityText } from '../../measure/reading/parse.ts'
import { anyScale, between, pick, type Random } from './chance.ts'

/** What a failure does to a part, in numbers. What is left out is as in a good part. */
export interface Effect {
  /** Ω in the way; Infinity where it is broken. */
  readonly series?: number
  /** Ω of a path to metal, and where along a winding it leaves it, 0 to 1. */
  readonly leak?: number
  readonly at?: number
  /** Ω between two wires that it should keep apart. */
  readonly across?: number
  /** Share of the turns that is left. */
  readonly turns?: number
  /** Share that is left of the voltage that it makes. */
  readonly gives?: number
  /** Which leg of a three-phase winding, 0 to 2. */
  readonly leg: number
  /** What of the part it is, where that has more than one thing that can fail. */
  readonly of?: Where
  /** It is only there above so many °C. */
  readonly above?: number
  /** It is only there at more than the few volts of a meter. */
  readonly underLoad?: boolean
}

export type Where = NonNullable<Does['of']>

/**
 * How badly a part has failed in this way.
 *
 * @param ohms of the good part, Ω
 */
export function drawEffect(does: Does, ohms: number, random: Random): Effect {
  const { adds, addsTimes, toGround, bridges, shorts, gives, of, above, underLoad } = does
  // Each is drawn in any case, so that what comes next does not depend on it.
  const drawn = { at: random(), leg: pick(random, [0, 1, 2]), brakes: between(random, 1, 1.7) }
  const scale = (span: Span) => anyScale(random, number(span.low), number(span.high))
  const bridged = shorts && between(random, shorts.low, shorts.high)
  return {
    ...(adds !== undefined && { series: adds === 'open' ? Infinity : scale(adds) }),
    ...(addsTimes && { series: ohms * scale(addsTimes) }),
    ...(toGround && { leak: scale(toGround), at: drawn.at }),
    ...(bridges && { across: scale(bridges) }),
    ...(bridged !== undefined && {
      turns: 1 - bridged,
      gives: Math.max(leastLeft, 1 - bridged * drawn.brakes),
    }),
    ...(gives && { gives: between(random, gives.low, gives.high) }),
    ...(above && { above: between(random, above.low, above.high) }),
    ...(of && { of }),
    ...(underLoad && { underLoad }),
    leg: drawn.leg,
  }
}

/**
 * Bridged turns are a loaded winding of their own and brake the flux, so the volts fall up to 1.7 times as far as the
 * ohms, to next to nothing. Common practice, no published source.
 */
const leastLeft = 0.03

interface Span {
  readonly low: string | number
  readonly high: string | number
}

/** The schema has read every text before. */
const number = (of: string | number): number =>
  typeof of === 'number' ? of : (parseQuantityText(of)?.value ?? Number.NaN)
