import type { Standing } from '../standing/standing.ts'
import { cautionsRead } from '../words/cautions/cautions.ts'
import { cautionsRenewed } from '../words/cautions/renewed.ts'

/** Names of the cautions that an owner has heard on this job: of each check, and of each time that it was tried. */
export function heardOnCall(input: Standing): ReadonlySet<string> {
  const { folded, knowledge } = input
  const hasTried = folded.putRight.size + folded.repairs.length + folded.tried.size > 0
  const renewed = new Set(cautionsRenewed(input).map(({ id }) => id))
  const ofTrials = hasTried ? knowledge.home.trial.cautions.filter((id) => !renewed.has(id)) : []
  return new Set([...cautionsRead(input), ...ofTrials])
}
