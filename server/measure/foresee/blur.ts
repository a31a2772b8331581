import { canJudge } from '../correct/adaptor.ts'
import { type Circumstances, correct } from '../correct/correct.ts'
import { edges } from '../decide/conformance.ts'
import { evidenceOfOver } from '../decide/evidence.ts'
import { typical } from '../decide/typical.ts'
import { uncertaintyOf } from '../doubt/budget.ts'
import { topOf } from '../doubt/meter.ts'
import { chanceBetween } from '../doubt/uncertainty.ts'
import type { Band, Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'

/** What one clean touch leaves in doubt. */
export const oneCleanTouch = ({ touches }: Quantity) => ({
  doubt: touches.contact?.clean ?? 0,
  spread: 0,
})

/** Gauss-Legendre, three points between 0 and 1. */
const nodes = [
  { at: 0.5 - Math.sqrt(0.15), weight: 5 / 18 },
  { at: 0.5, weight: 8 / 18 },
  { at: 0.5 + Math.sqrt(0.15), weight: 5 / 18 },
]

/**
 * How this meter tells the bands apart, before anything is read: row per true band, column per band as
 * it would be read, both in the order of `quantity.bands`; rows sum to 1.
 *
 * Each row is the mean over the band's typical values of the chance that one clean touch reads in each
 * band. What no clean touch does (poor contact, a harness left plugged) is not in it: the knowledge
 * gives that for a healthy part. A band the limits leave no room for reads as itself.
 */
export function blur(limits: Limits, at: Circumstances): number[][] {
  const { bands, overRange } = at.quantity
  const top = topOf(at.ranges)
  const touched = oneCleanTouch(at.quantity)
  const ranges = edges(limits, at.quantity)
  const shown = readingOf(at)
  const readAs = (value: number) => {
    const reading = shown(value)
    if (overRange && reading > top) return evidenceOfOver(top, limits, at.quantity)
    const uncertainty = uncertaintyOf(correct(reading, touched, at).contributions)
    return ranges.map(({ from, to }) => chanceBetween(from - value, to - value, uncertainty))
  }
  const rows = typical(limits, at.quantity).map((pieces, b) => {
    if (pieces.length === 0) return bands.map((_, other) => (other === b ? 1 : 0))
    if (bands[b] === overRange) return evidenceOfOver(top, limits, at.quantity)
    const row = bands.map(() => 0)
    for (const { from, to, share } of pieces) {
      for (const node of nodes) {
        const chances = readAs(from + (to - from) * node.at)
        for (let o = 0; o < row.length; o += 1) row[o]! += share * node.weight * chances[o]!
      }
    }
    return row
  })
  return at.adaptor && !canJudge(limits) ? alike(rows) : rows
}

/** Two bands are told apart where their rows of the blur differ by this much (total variation). */
const apart = 0.5

/**
 * The bands that the limits leave room for, in rising order, those together that one clean touch
 * cannot tell apart.
 */
export function toldApart(limits: Limits, at: Circumstances): Band[][] {
  const rows = blur(limits, at)
  const groups: Band[][] = []
  let before: readonly number[] | undefined
  edges(limits, at.quantity).forEach(({ band, from, to }, b) => {
    if (from >= to) return
    const row = rows[b]!
    if (before !== undefined && distance(before, row) < apart) groups.at(-1)!.push(band)
    else groups.push([band])
    before = row
  })
  return groups
}

/** Total variation: ½·Σ|p − q|, 0 for the same row, 1 for rows that share nothing. */
const distance = (one: readonly number[], other: readonly number[]) =>
  one.reduce((sum, p, o) => sum + Math.abs(p - other[o]!), 0) / 2

/** What the meter would show of a true value: corrections are straight lines, turned round here. */
export function readingOf(at: Circumstances): (value: number) => number {
  const touched = oneCleanTouch(at.quantity)
  const none = correct(0, touched, at).value
  const one = correct(1, touched, at).value
  return (value) => Math.max(0, (value - none) / (one - none))
}

/** Every band reads as the mean of all: a check that tells nothing. */
function alike(rows: readonly (readonly number[])[]): number[][] {
  const mean = rows.map((_, o) => rows.reduce((sum, row) => sum + row[o]!, 0) / rows.length)
  return rows.map(() => mean)
}
