import { canJudge } from '../correct/adaptor.ts'
import { bladeInto } from '../correct/blades.ts'
import { type Circumstances, correct } from '../correct/correct.ts'
import { bandProbabilities, conformance } from '../decide/conformance.ts'
import { decide } from '../decide/decision.ts'
import { combine } from '../doubt/budget.ts'
import type { Band, Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { oneCleanTouch, readingOf, toldApart } from './blur.ts'

/** What would judge the limits better, the simplest first. */
export type Way =
  | 'zero the leads'
  | 'measure the temperature'
  | 'measure the speed'
  | 'finer meter'
  | 'four-wire'
  | 'known current and millivolts'
  | 'another quantity'
  | 'active adaptor'

export interface Fitness {
  /**
   * `unfit`: not even the best value the limits allow could be proved to conform. `coarse`: only values
   * well inside can. `fit`: nearly all.
   */
  readonly kind: 'fit' | 'coarse' | 'unfit'
  /** C_m = T/(4u), width of the limits by four times the standard uncertainty (JCGM 106, 7.6). */
  readonly capability: number
  /** Bands in rising order, those together that one clean touch cannot tell apart. */
  readonly groups: readonly (readonly Band[])[]
  /** Empty where it is fit. */
  readonly ways: readonly Way[]
}

/** At C_m = 2 values in the middle three fifths of the limits can be proved to conform. */
const enough = 2
/** What makes up this share of u² is worth doing something about. */
const matters = 0.25
/** Below this many Ω two leads and two touches spoil a reading. Common practice. */
const lowOhms = 10

/** Whether what leads and touches put into a reading matters against limits as low as these. */
export function leadsMatter({ low, high }: Limits, { touches }: Quantity): boolean {
  return touches.leads && (high ?? low ?? 0) < lowOhms
}

/**
 * Whether this meter, used like this, can judge these limits. The limits' width T is taken from 0 where
 * only a high limit is given, and as the low limit where only that is.
 */
export function fitness(limits: Limits, at: Circumstances): Fitness {
  const { quantity } = at
  const { low = 0, high } = limits
  const width = high === undefined ? low : high - low
  const middle = high === undefined ? 2 * low : limits.low ? (low + high) / 2 : 0
  const budget = combine(correct(readingOf(at)(middle), oneCleanTouch(quantity), at).contributions)
  const capability = width / (4 * budget.u)
  const best = conformance(bandProbabilities(middle, budget, limits, quantity), quantity)
  const judges = !at.adaptor || canJudge(limits)
  const proves = judges && decide(best) === 'conforms'
  const kind = quantity.corrections.includes('next blade')
    ? byBlades(limits, at)
    : proves
      ? capability >= enough
        ? 'fit'
        : 'coarse'
      : 'unfit'
  const share = (what: string) =>
    budget.lines.reduce((sum, line) => sum + (line.what === what ? line.share : 0), 0)
  return {
    kind,
    capability,
    groups: toldApart(limits, at),
    ways: kind === 'fit' ? [] : ways(limits, at, (what) => share(what) >= matters, judges),
  }
}

/** So many gaps stand for all that the limits allow. */
const gaps = 20
/** Of those the share to be proved that C_m = 2 leaves of the middle. */
const middleShare = 0.6

/** A gauge that reads in steps judges as well as its steps fall on the limits: counted out, gap by gap. */
function byBlades(limits: Limits, at: Circumstances): Fitness['kind'] {
  const { low = 0, high = 2 * low } = limits
  const proved = Array.from({ length: gaps }, (_, i) => {
    const blade = bladeInto(low + ((i + 0.5) / gaps) * (high - low), at.ranges)
    const { value, contributions } = correct(blade, oneCleanTouch(at.quantity), at)
    const bands = bandProbabilities(value, combine(contributions), limits, at.quantity)
    return decide(conformance(bands, at.quantity)) === 'conforms'
  }).filter(Boolean).length
  if (proved === 0) return 'unfit'
  return proved >= middleShare * gaps ? 'fit' : 'coarse'
}

function ways(
  limits: Limits,
  at: Circumstances,
  much: (what: string) => boolean,
  adaptorJudges: boolean,
): Way[] {
  const { touches, instead } = at.quantity
  const low = leadsMatter(limits, at.quantity)
  const coarse = much('meter') || much('leads')
  const all: readonly (readonly [boolean, Way])[] = [
    [touches.leads && at.zero === undefined && (low || much('leads')), 'zero the leads'],
    [much('temperature'), 'measure the temperature'],
    [much('speed') && at.limitsRpm !== undefined, 'measure the speed'],
    [much('meter') || much('blade'), 'finer meter'],
    [low && coarse, 'four-wire'],
    [low && coarse, 'known current and millivolts'],
    [low && coarse && at.material === 'copper' && instead !== undefined, 'another quantity'],
    [!adaptorJudges || much('adaptor'), 'active adaptor'],
  ]
  return all.filter(([helps]) => helps).map(([, way]) => way)
}
