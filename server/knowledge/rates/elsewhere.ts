import { presentShares } from '../../diagnosis/rates/shares.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Complaint } from '../schema/index.ts'
import type { Machine } from '../schema/machine.ts'
import type { CountedRepair } from './present.ts'

/** How often a cause of a complaint was none of its tree, among the confirmed repairs that can say so. */
export interface ElsewhereCount {
  readonly elsewhere: number
  readonly all: number
}

/** The share of a complaint's causes that its tree does not hold, and what was confirmed of it. */
export interface PresentElsewhere {
  /** By the tables, above 0 and below 1. */
  readonly tables: number
  /** On machines of this family, and on all others. */
  readonly own: ElsewhereCount
  readonly others: ElsewhereCount
  readonly now: number
}

/**
 * What confirmed repairs make of the share of causes outside the tree. A complaint has such a cause or one of the tree, so
 * it is the same mean of a Dirichlet prior as for the causes of a sheet, with two of them. How the causes inside divide is
 * independent of it under that prior, and is worked out by itself. Repairs from before such a cause could be written down
 * name no complaint: only those of the tree were ever confirmed, so they say nothing of the share. And whoever cures
 * something that is not listed may well not write it down, while a part that was named is one press. So what was confirmed
 * is a lower bound of the share: it raises that of the tables, and never lowers it.
 */
export function presentElsewhere(
  { machines }: Knowledge,
  { family }: Machine,
  { id, elsewhere }: Pick<Complaint, 'id' | 'elsewhere'>,
  repairs: readonly CountedRepair[],
): PresentElsewhere {
  const those = repairs.filter(
    ({ machine, complaint }) => complaint === id && machines.has(machine),
  )
  const isOwn = ({ machine }: CountedRepair) => machines.get(machine)?.family === family
  const own = countOf(those.filter(isOwn))
  const others = countOf(those.filter((each) => !isOwn(each)))
  const { share } = elsewhere
  const [seen = share] = presentShares([share, 1 - share], split(own), split(others))
  return { tables: share, own, others, now: Math.max(share, seen) }
}

const countOf = (repairs: readonly CountedRepair[]): ElsewhereCount => ({
  elsewhere: repairs.filter(({ cause }) => cause !== undefined).length,
  all: repairs.length,
})

const split = ({ elsewhere, all }: ElsewhereCount) => [elsewhere, all - elsewhere]
