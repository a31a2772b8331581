import type { Standing } from '../standing/standing.ts'
import { cautionsRead } from '../words/cautions/cautions.ts'
import { cautionsRenewed } from '../words/cautions/renewed.ts'

/** Names of the cautions that an owner has heard on this job: of each check, and of each time that it was tried. */
export function heardOnCall(input: Standing): ReadonlySet<string> {
  const { folded, knowledge } = input
  const { trial, ways } = knowledge.home
  const hasTried =
    folded.repairs.length > 0 || [...folded.putRight.values()].includes('still there')
  const renewed = new Set(cautionsRenewed(input).map(({ id }) => id))
  const ofTrials = [
    ...(hasTried ? trial.cautions : []),
    // What was left half done was perhaps not heard to the end.
    ...[...folded.tried].flatMap(([way, came]) =>
      came === 'broken off' ? [] : (ways[way]?.cautions ?? []),
    ),
  ]
  return new Set([...cautionsRead(input), ...ofTrials.filter((id) => !renewed.has(id))])
}
