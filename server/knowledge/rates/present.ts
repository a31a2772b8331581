import { numbered } from '../../diagnosis/model/named.ts'
import { presentShares } from '../../diagnosis/rates/shares.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/index.ts'
import { type Cause, type CauseName, causesOf, textOfCause } from './causes.ts'

/** A repair after which the complaint was gone, as far as it is counted. */
export interface CountedRepair {
  readonly machine: string
  /** What it was; where nobody said which failure, several that together are one a part. */
  readonly causes: readonly CountedCause[]
  /** Which complaint it cured; left out where a cause outside the tree could not be written down yet. */
  readonly complaint?: string | undefined
  /** In words, what it was where it was no part of the tree. */
  readonly cause?: string | undefined
}

export interface CountedCause extends CauseName {
  /** Above 0, at most 1. */
  readonly count: number
}

/** A cause with what was confirmed of it, and what that makes of its rate. */
export interface PresentRate {
  readonly cause: Cause
  /** Counts on machines of this family, and on all others. */
  readonly own: number
  readonly others: number
  /** Per 1000 machines that come in, for each of the cause's parts. */
  readonly now: number
}

/**
 * What confirmed repairs make of the base rates of a machine. They say how causes divide among themselves,
 * not how often machines come in, so that all rates of the sheet keep their sum; parts that are alike share
 * a count evenly. Repairs on machines that are no longer among the sheets, and causes that this one does not have, are left
 * out of account.
 */
export function presentRates(
  knowledge: Knowledge,
  machine: Machine,
  repairs: readonly CountedRepair[],
): readonly PresentRate[] {
  const causes = causesOf(knowledge, machine)
  const total = causes.reduce((sum, { rate, parts }) => sum + rate * parts.length, 0)
  const tables = causes.map(({ rate, parts }) => (rate * parts.length) / total)
  const counts = { own: new Map<string, number>(), others: new Map<string, number>() }
  for (const repair of repairs) {
    const family = knowledge.machines.get(repair.machine)?.family
    if (family === undefined) continue
    const those = family === machine.family ? counts.own : counts.others
    for (const cause of repair.causes) {
      const name = textOfCause(cause)
      those.set(name, (those.get(name) ?? 0) + cause.count)
    }
  }
  const of = (those: ReadonlyMap<string, number>) =>
    causes.map((cause) => those.get(textOfCause(cause)) ?? 0)
  const own = of(counts.own)
  const others = of(counts.others)
  const shares = presentShares(tables, own, others)
  return causes.map((cause, i) => ({
    cause,
    own: numbered(own, i),
    others: numbered(others, i),
    now: (numbered(shares, i) * total) / cause.parts.length,
  }))
}

/** By fault (`part.mode`): its present rate over that of the tables. */
export function factorsOf(rates: readonly PresentRate[]): ReadonlyMap<string, number> {
  return new Map(
    rates.flatMap(({ cause, now }) =>
      cause.parts.map(({ id }) => [`${id}.${cause.mode}`, now / cause.rate] as const),
    ),
  )
}
