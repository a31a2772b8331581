import type { Band, Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { edges } from './conformance.ts'

/** A stretch of true values, evenly spread, and how much of its band's parts lie in it. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly share: number
}

/**
 * Where the true values of a band lie, as stretches in rising order whose shares sum to 1; none for a
 * band that the limits leave no room for. From memory:
 *
 * - `in range`: makers scatter less than they allow, so three quarters in the middle half; without a
 *   low limit from 0 up; without a high one up to ten times the low limit, most within three.
 * - `short` and `low`: evenly from 0, and from a tenth of the low limit.
 * - `high` and `open`: a bad joint may add anything, so evenly in the logarithm, over one and two
 *   decades from the high limit.
 */
export function typical(limits: Limits, quantity: Quantity): readonly (readonly Piece[])[] {
  return edges(limits, quantity).map(({ band, from, to }) =>
    from < to ? pieces[band](from, to) : [],
  )
}

const pieces: Record<Band, (from: number, to: number) => Piece[]> = {
  short: (_, to) => [{ from: 0, to, share: 1 }],
  low: (from, to) => [{ from: Math.max(from, 0), to, share: 1 }],
  'in range': (from, to) => {
    if (to === Infinity) {
      return [
        { from, to: 3 * from, share: 0.75 },
        { from: 3 * from, to: 10 * from, share: 0.25 },
      ]
    }
    const start = Math.max(from, 0)
    const quarter = (to - start) / 4
    return [
      { from: start, to: start + quarter, share: 0.125 },
      { from: start + quarter, to: to - quarter, share: 0.75 },
      { from: to - quarter, to, share: 0.125 },
    ]
  },
  high: (from) => decades(from, 1),
  open: (from) => decades(from, 2),
}

const piecesPerDecade = 4

function decades(from: number, count: number): Piece[] {
  const many = count * piecesPerDecade
  return Array.from({ length: many }, (_, i) => ({
    from: from * 10 ** (i / piecesPerDecade),
    to: from * 10 ** ((i + 1) / piecesPerDecade),
    share: 1 / many,
  }))
}
