import type { Knowledge } from '../../knowledge/knowledge.ts'
import { asides } from '../record/events.ts'
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
    ...[...folded.tried.keys()].flatMap((way) => ways[way]?.cautions ?? []),
  ]
  const letGo = hasGone(input) ? cautionsThatHold(knowledge) : []
  const heard = [...cautionsRead(input), ...ofTrials.filter((id) => !renewed.has(id))]
  return new Set(heard.filter((id) => !letGo.includes(id)))
}

/** They were off with it last, or on their way: what held it is undone. */
function hasGone({ job, kase }: Standing): boolean {
  const last = job.events.findLast(({ event }) => !asides.includes(event.kind))?.event
  switch (last?.kind) {
    case 'tried':
      return last.helped || last.takenBack === true
    case 'put right':
    case 'repaired':
    case 'proved':
      return kase.complaint.home.moves === true
    default:
      return false
  }
}

/** Names of the cautions that say how a machine is held where it stands. */
const cautionsThatHold = ({ cautions }: Knowledge): string[] =>
  Object.entries(cautions.cautions).flatMap(([id, { phone }]) =>
    phone.includes('{held}') ? id : [],
  )
