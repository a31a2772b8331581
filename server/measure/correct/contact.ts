import type { Touching, Trouble } from '../reading/touching.ts'

/** What several touches of the probes come to. */
export type Contact =
  | ({ readonly kind: 'steady' | 'poor contact' } & Settled)
  | {
      readonly kind: 'open'
      readonly touches: number
      readonly bySelf: number
      readonly chanceAllPoor: number
    }

export interface Settled {
  /** Taken as read from here on. */
  readonly estimate: number
  /** Largest minus smallest of the touches used. */
  readonly spread: number
  readonly used: number
  readonly of: number
  /** So many of those that agree stand by themselves: all, or one a clip where they share one. */
  readonly bySelf: number
  /**
   * How far trouble that none of the touches shows may have moved the estimate. It moves one way only;
   * taken as ± this much, so that nothing is condemned for what contact may have hidden.
   */
  readonly doubt: number
  /** The chance that every touch used was a poor one, so that the estimate says nothing. */
  readonly chanceAllPoor: number
}

export interface Probing {
  /** How far two good touches may lie apart. */
  readonly width: number
  /** Deep, corroded or hidden pins. */
  readonly awkward: boolean
  /** On which clip each touch was read, by number, where they may share one; left out: all on one. */
  readonly clips?: readonly number[]
}

/** The chance that a touch is poor: at an ordinary pin, and at an awkward one. From memory. */
const poorTouch = { ordinary: 0.1, awkward: 0.5 }
/** What is known beforehand counts as much as this many touches. */
const priorTouches = 2
/** Of poor touches whose leads stay clipped on, the share that the clip is to blame for. From memory. */
const ofTheClip = 1 / 3

/**
 * Settles several touches, values and OL, into one estimate.
 *
 * The best touch is the lowest where trouble adds and the highest where it takes away. The touches
 * within `width` of it agree with it, and `taken` says what is taken of those.
 * - `steady`: two agree, or there was only one touch. The doubt left is one good touch's, shared among
 *   those that agree.
 * - `poor contact`: the best stands alone among others; what moved those may have moved it as far, or
 *   by what a poor touch adds where one of them is OL.
 * - `open`: nothing but OL.
 *
 * Each touch seen to be poor raises the chance that the others were poor too: with p of a touch
 * (2·p0 + poor)/(2 + touches), all n used are with p^n. Where the leads stay clipped on, a third of p0
 * is the chance c that a clip is bad, and then all on it are poor: with m clips c^m + (1 − c^m)·p^n, with
 * what is left of p0 in p.
 *
 * @throws RangeError for no touches, or one that is no number.
 */
export function settle(
  touches: readonly (number | 'OL')[],
  { trouble, taken, contact, clipped }: Touching,
  { width, awkward, clips = touches.map(() => 0) }: Probing,
): Contact {
  const { clean, poor } = contact ?? { clean: 0, poor: 0 }
  const of = touches.length
  const values = touches.filter((touch) => touch !== 'OL')
  if (of === 0 || !values.every(Number.isFinite)) throw new RangeError(`no touches: ${touches}`)
  const poorBefore = awkward ? poorTouch.awkward : poorTouch.ordinary
  const chanceAllPoor = (agree: number, poor: number, bySelf: number) => {
    const shared = clipped ? ofTheClip * poorBefore : 0
    const own = priorTouches * (poorBefore - shared) + poor
    const each = (own / (priorTouches + of)) ** agree
    const clip = shared ** bySelf
    return clip + (1 - clip) * each
  }
  const bySelfOf = (isOne: (touch: number | 'OL') => boolean) => {
    const ones = clips.filter((_, i) => isOne(touches[i] ?? 'OL'))
    return clipped ? new Set(ones).size : ones.length
  }
  const [best] = values.sort((a, b) => (trouble === 'adds' ? a - b : b - a))
  if (best === undefined) {
    const bySelf = bySelfOf(() => true)
    return { kind: 'open', touches: of, bySelf, chanceAllPoor: chanceAllPoor(of, 0, bySelf) }
  }
  const off = (value: number) => Math.abs(value - best)
  const agrees = (touch: number | 'OL') => touch !== 'OL' && off(touch) <= width * (1 + 1e-9)
  const agree = values.filter(agrees)
  const bySelf = bySelfOf(agrees)
  const { used, estimate } = takenAsRead[taken](agree, best)
  const alone = agree.length === 1 && of > 1
  const reach = Math.max(...values.map(off), values.length < of ? poor : 0)
  return {
    kind: alone ? 'poor contact' : 'steady',
    estimate,
    spread: Math.max(...used.map(off)),
    used: used.length,
    of,
    bySelf,
    doubt: alone ? Math.max(clean, mostOf(best, reach, trouble)) : clean / agree.length,
    chanceAllPoor: chanceAllPoor(agree.length, of - agree.length, bySelf),
  }
}

/** Which of the touches that agree are used, best first, and what they come to. */
const takenAsRead: Readonly<
  Record<
    Touching['taken'],
    (
      agree: readonly number[],
      best: number,
    ) => { readonly used: readonly number[]; readonly estimate: number }
  >
> = {
  'the best': (agree, best) => ({ used: agree, estimate: best }),
  'the mean of the best three': (agree) => {
    const used = agree.slice(0, 3)
    return { used, estimate: used.reduce((a, b) => a + b, 0) / used.length }
  },
}

/** Contact cannot add more than the whole reading. */
const mostOf = (best: number, reach: number, trouble: Trouble) =>
  trouble === 'adds' ? Math.min(best, reach) : reach
