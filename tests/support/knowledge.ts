import { complaintsFor } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'

/** The knowledge that ships. */
export const shippedTrees = `${import.meta.dirname}/../../trees`

/** Every complaint on every machine it fits, as shipped. */
export function shippedCases() {
  const knowledge = loadKnowledge(shippedTrees)
  return [...knowledge.machines.values()].flatMap((machine) =>
    complaintsFor(knowledge, machine.id).map((complaint) =>
      caseFor(knowledge, machine.id, complaint.id),
    ),
  )
}
