import { resolve } from 'node:path'
import type { Case } from '../../server/knowledge/case.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'

export const shippedTrees = resolve(import.meta.dirname, '../../trees')

let shipped: Knowledge | undefined

/** The knowledge that is shipped, read once for all tests of a project. */
export function shippedKnowledge(): Knowledge {
  shipped ??= loadKnowledge(shippedTrees)
  return shipped
}

/** Every complaint on every machine that it fits. */
export function shippedCases(): Case[] {
  const knowledge = shippedKnowledge()
  return allFits(knowledge).map(({ machine, complaint }) =>
    caseFor(knowledge, machine.id, complaint.id),
  )
}
