import { fillAll, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Standing } from '../../standing/standing.ts'

type Known = Pick<Standing, 'kase' | 'folded' | 'knowledge'>

/** What comes between an engine that runs and a boat under way. */
export const castingOff = ({ folded, knowledge }: Known): readonly string[] =>
  folded.conditions.afloat ? knowledge.home.afloat.go : []

/** What comes between an engine that runs and a machine under way: a boat goes on the water, wherever it is now. */
export const movingOff = ({ kase: { machine }, knowledge: { home } }: Known): readonly string[] =>
  machine.afloat ? home.afloat.go : fillAll(home.trial.go, fillingsOf(machine))
