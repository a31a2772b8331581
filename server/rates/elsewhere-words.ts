import { complaintsFor } from '../knowledge/fits.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import {
  type ElsewhereCount,
  type PresentElsewhere,
  presentElsewhere,
} from '../knowledge/rates/elsewhere.ts'
import type { CountedRepair } from '../knowledge/rates/present.ts'
import type { Machine } from '../knowledge/schema/index.ts'
import { share } from './words.ts'

/** How often a cause was none of the tree, a sentence for each complaint of which something was confirmed. */
export function elsewhereWords(
  knowledge: Knowledge,
  machine: Machine,
  repairs: readonly CountedRepair[],
): string[] {
  return complaintsFor(knowledge, machine.id).flatMap((complaint) => {
    const present = presentElsewhere(knowledge, machine, complaint, repairs)
    return present.own.all + present.others.all === 0
      ? []
      : [`${complaint.title}: ${countsIn(present)}. ${sharesIn(present)}`]
  })
}

const countsIn = ({ own, others }: PresentElsewhere): string =>
  [
    ...(own.all > 0 ? [`${ofAll(own)} here`] : []),
    ...(others.all > 0 ? [`${ofAll(others)} on other families`] : []),
  ].join(', ')

const ofAll = ({ elsewhere, all }: ElsewhereCount): string => `${elsewhere} of ${all}`

const sharesIn = ({ tables, now }: PresentElsewhere): string =>
  `The tables say ${share(tables)}, and now it is ${share(now)}.`
