/**
 * Which way trouble at the probes moves a reading. Contact resistance only ever adds ohms; a weak pull
 * or a bad contact only ever takes volts away.
 */
export type Trouble = 'adds' | 'takes away'

/** What several touches of the probes come to. */
export type Contact =
  | ({ readonly kind: 'steady' | 'poor contact' } & Settled)
  | { readonly kind: 'open'; readonly touches: number; readonly chanceAllPoor: number }

export interface Settled {
  /** Taken as read from here on. */
  readonly estimate: number
  /** Largest minus smallest of the touches used. */
  readonly spread: number
  readonly used: number
  readonly of: number
  /**
   * How far trouble that none of the touches shows may have moved the estimate. It moves one way only;
   * taken as ± this much, so that nothing is condemned for what contact may have hidden.
   */
  readonly doubt: number
  /** The chance that every touch used was a poor one, so that the estimate says nothing. */
  readonly chanceAllPoor: number
}

export interface Probing {
  readonly trouble: Trouble
  /** How far two good touches may lie apart. */
  readonly width: number
  /** What one good touch may add or take away. */
  readonly typicalDoubt: number
  /** Deep, corroded or hidden pins. */
  readonly awkward: boolean
}

/**
 * A clean touch with sharp probes adds up to this many ohms. From memory; 20 mΩ from pressure and oxide
 * is confirmed as one meter maker's illustration.
 */
export const cleanTouch = 0.03

/** A poor touch that does conduct adds up to this many ohms. From memory. */
const poorTouchAdds = 5

/** The chance that a touch is poor: at an ordinary pin, and at an awkward one. From memory. */
const poorTouch = { ordinary: 0.1, awkward: 0.5 }
/** What is known beforehand counts as much as this many touches. */
const priorTouches = 2
/** Of several pulls the best three are taken. Common practice. */
const pulls = 3

/**
 * Settles several touches, values and OL, into one estimate.
 *
 * The best touch is the lowest where trouble adds and the highest where it takes away. The touches
 * within `width` of it agree with it: of ohms the best is taken, of pulls the mean of the best three.
 * - `steady`: two agree, or there was only one touch. The doubt left is one good touch's, shared among
 *   those that agree.
 * - `poor contact`: the best stands alone among others; what moved those may have moved it as far, or
 *   by a few ohms where one of them is OL.
 * - `open`: nothing but OL.
 *
 * Each touch seen to be poor raises the chance that the others were poor too: with p of a touch
 * (2·p0 + poor)/(2 + touches), all n used are with p^n.
 *
 * @throws RangeError for no touches, or one that is no number.
 */
export function settle(touches: readonly (number | 'OL')[], probing: Probing): Contact {
  const { trouble, width, typicalDoubt, awkward } = probing
  const of = touches.length
  const values = touches.filter((touch) => touch !== 'OL')
  if (of === 0 || !values.every(Number.isFinite)) throw new RangeError(`no touches: ${touches}`)
  const before = priorTouches * (awkward ? poorTouch.awkward : poorTouch.ordinary)
  const chanceAllPoor = (agree: number, poor: number) =>
    ((before + poor) / (priorTouches + of)) ** agree
  if (values.length === 0) {
    return { kind: 'open', touches: of, chanceAllPoor: chanceAllPoor(of, 0) }
  }
  values.sort((a, b) => (trouble === 'adds' ? a - b : b - a))
  const best = values[0]!
  const agree = values.filter((value) => Math.abs(value - best) <= width * (1 + 1e-9))
  const taken = trouble === 'adds' ? agree : agree.slice(0, pulls)
  const alone = agree.length === 1 && of > 1
  const reach = Math.max(Math.abs(values.at(-1)! - best), values.length < of ? poorTouchAdds : 0)
  return {
    kind: alone ? 'poor contact' : 'steady',
    estimate: trouble === 'adds' ? best : taken.reduce((a, b) => a + b, 0) / taken.length,
    spread: Math.abs(taken.at(-1)! - best),
    used: taken.length,
    of,
    doubt: alone
      ? Math.max(typicalDoubt, mostOf(best, reach, trouble))
      : typicalDoubt / agree.length,
    chanceAllPoor: chanceAllPoor(agree.length, of - agree.length),
  }
}

/** Contact cannot be more than the whole reading. */
const mostOf = (best: number, reach: number, trouble: Trouble) =>
  trouble === 'adds' ? Math.min(best, reach) : reach
