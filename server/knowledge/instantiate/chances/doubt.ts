import { mixed } from '../../../diagnosis/model/chances.ts'
import type { Chances } from '../../schema/shared.ts'

type Row = readonly number[]

/**
 * No reading is impossible: a pin is miscounted, a dial misread. Every row gives this share evenly to
 * all outcomes, so that one slip cannot rule out the truth for good. From memory.
 */
export const doubtShare = 0.04

/**
 * How much more often a hand slips than the tables say, 0 or more: who writes a table has a steady one. Where
 * people slip as the tables say and where they slip three times as often, what is stated stays as near to
 * what is so. From memory.
 */
export const slipsMore = 0.4

/** A row of chances in the order of the outcomes, with the share of slips that is everywhere. */
export function floored(chances: Chances, outcomes: readonly string[]): number[] {
  const even = doubtShare / outcomes.length
  return outcomes.map((outcome) => (1 - doubtShare) * (chances[outcome] ?? 0) + even)
}

/** What is read by a hand that slips more often than the tables say. */
export interface Unsteady {
  /** `slips[s][o]`, as a check has them: chance that one take comes out as o where the part itself gives s. */
  readonly slips: readonly Row[]
  /** A row of the check as such a hand reads it; of the same row always the same. */
  readonly read: (row: Row) => Row
}

/** The hand of which a check says how it slips, slipping `slipsMore` more often. */
export function unsteady(slips: readonly Row[]): Unsteady {
  const kept = new Map<Row, Row>()
  return {
    slips: slips.map((row, state) => row.map((p, o) => more(p, o === state ? 1 : 0))),
    read: (row) => {
      const known = kept.get(row)
      if (known !== undefined) return known
      const made = mixed([1 - slipsMore, slipsMore], [row, mixed(row, slips)])
      kept.set(row, made)
      return made
    },
  }
}

/** So much further from where it would be without a slip. */
const more = (p: number, unslipped: number): number => unslipped + (1 + slipsMore) * (p - unslipped)
