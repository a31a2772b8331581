import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { fillAll, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { repairedNames } from '../words/names.ts'
import { lineCut } from './cut-off.ts'
import { heardOnCall } from './heard.ts'
import { movingOff } from './home/under-way.ts'
import { cautionLines, linesOf, saying } from './saying.ts'
import { onceItRuns } from './start/stop-to-try.ts'
import type { PhoneDeed } from './view.ts'

/** It is gone: what to mind before they go, and whether it stays away. Nothing where nothing waits for its proof. */
export function presentRepaired(input: Standing & Asked): PhoneDeed | undefined {
  const { job, kase, knowledge, folded, line = 1 } = input
  const last = folded.repairs.at(-1)
  if (last?.outcome !== null) return undefined
  const { trial } = knowledge.home
  const { machine } = kase
  // It was tried under way, but for a boat on land.
  const isUnderWay = kase.complaint.home.moves && (!machine.afloat || folded.conditions.afloat)
  const go = isUnderWay ? [] : movingOff(input)
  const lines = [
    ...cautionLines(cautionCards(trial.cautions, knowledge, machine), heardOnCall(input)),
    ...onceItRuns(machine),
    ...linesOf('before they go', [...go, ...fillAll(trial.after, fillingsOf(machine))]),
    { says: 'When you are there, or it does it again, ring me: has it stayed away?', label: 'ask' },
  ]
  const proof = (value: string, says: string) => ({
    action: `/jobs/${job.id}/proofs`,
    fields: [{ name: 'choice', value }],
    says,
  })
  return {
    title: `It was ${repairedNames(kase, [last])}`,
    saying: saying(lines, line, (number) => `/jobs/${job.id}?line=${number}`),
    answers: [proof('gone', 'It has stayed away'), proof('still-there', 'It came back')],
    cutOff: lineCut(job),
  }
}
