import type { Standing } from '../standing/standing.ts'
import { cautionsRead } from '../words/cautions.ts'

/** Names of the cautions that an owner has heard on this job: of each check, and of each time that it was tried. */
export function heardOnCall(input: Standing): ReadonlySet<string> {
  const { folded, knowledge } = input
  const hasTried = folded.putRight.size + folded.repairs.length + folded.tried.size > 0
  return new Set([...cautionsRead(input), ...(hasTried ? knowledge.home.trial.cautions : [])])
}
