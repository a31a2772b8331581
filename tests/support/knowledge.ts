import { resolve } from 'node:path'
import { named } from '../../server/diagnosis/model/named.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import type { Machine } from '../../server/knowledge/schema/index.ts'

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

/** The case that tests take where any would do: a single with a winding, an igniter and a battery. */
export const anyCase = (): Case => caseFor(shippedKnowledge(), 'haulmoor-1e', 'cuts-out')

/** The machine with two cylinders. */
export const twin = (): Machine => named(shippedKnowledge().machines, 'larkfell-2i')
