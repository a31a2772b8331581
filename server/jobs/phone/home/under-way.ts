import { fillAll, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Standing } from '../../standing/standing.ts'

type Known = Pick<Standing, 'kase' | 'folded' | 'knowledge'>

/** What comes between an engine that runs and a boat under way. */
export const castingOff = ({ folded, knowledge }: Known): readonly string[] =>
  folded.conditions.afloat ? knowledge.home.afloat.go : []

/** What comes between an engine that runs and a machine under way, on land or on the water. */
export const movingOff = (input: Known): readonly string[] =>
  input.folded.conditions.afloat
    ? castingOff(input)
    : fillAll(input.knowledge.home.trial.go, fillingsOf(input.kase.machine))
