import { fillAll, fillingsOf, sentencesIn } from '../../../knowledge/instantiate/words.ts'
import type { Standing } from '../../standing/standing.ts'

type Known = Pick<Standing, 'kase' | 'folded' | 'knowledge'>

/** What comes between an engine that runs and a boat under way. */
export const castingOff = ({ folded, knowledge }: Known): readonly string[] =>
  folded.conditions.afloat ? knowledge.home.afloat.go : []

/** What comes between an engine that runs and a machine under way: a boat goes on the water, and on land it is launched. */
export function movingOff({ kase: { machine }, folded, knowledge: { home } }: Known): string[] {
  const { afloat, trial } = home
  const lifted = machine.held === undefined ? [trial.lifted] : []
  const onLand = machine.moveOff ?? [...lifted, ...trial.go]
  const ashore = folded.conditions.afloat ? afloat.go : [...afloat.launch, ...afloat.go]
  return fillAll(machine.afloat ? ashore : onLand, fillingsOf(machine)).flatMap(sentencesIn)
}
