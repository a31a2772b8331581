import type { CautionCard } from '../../../knowledge/case.ts'
import { cautionCards } from '../../../knowledge/instantiate/caution-cards.ts'
import { fill, fillAll, fillingsOf, sentencesIn } from '../../../knowledge/instantiate/words.ts'
import { barredBy, barringsOf } from '../../standing/barred.ts'
import type { Standing } from '../../standing/standing.ts'
import { putBackByPhone } from '../../standing/way/serves-running.ts'
import { toPutBack } from '../../standing/way/way-to.ts'
import { withRenewed } from '../../words/cautions/renewed.ts'
import { movingOff } from '../home/under-way.ts'
import { linesOf } from '../saying.ts'
import type { Line } from '../view.ts'
import { stopNow } from './stop-to-try.ts'

/** How an owner tries whether the complaint is gone. */
export interface Trial {
  readonly cautions: readonly CautionCard[]
  readonly lines: readonly Line[]
}

/**
 * Nothing where it cannot be tried on the spot, or must not be.
 *
 * @param undone names of set-ups that were put back right before it
 */
export function trialOf(input: Standing, undone: readonly string[] = []): Trial | undefined {
  const { kase, knowledge, folded } = input
  const { home } = knowledge
  const fillings = fillingsOf(kase.machine)
  // A boat is not worked on land.
  const isAshore = kase.complaint.home.moves && kase.machine.afloat && !folded.conditions.afloat
  const steps = fillAll(kase.complaint.home.trial ?? home.trial.do, fillings)
  const does = isAshore ? sentencesIn(fill(home.afloat.ashore, fillings)) : steps
  const barrings = barringsOf(kase, folded)
  const isBarred = (['cranking', 'running'] as const).some(
    (engine) => barredBy(barrings, { engine }) !== null,
  )
  if (steps.length === 0 || isBarred) return undefined
  const go = kase.complaint.home.moves && !isAshore ? movingOff(input) : []
  const starting = does.slice(0, go.length > 0 ? -1 : 2)
  const apart = toPutBack(input.asItStands).filter(({ setup }) => !undone.includes(setup.id))
  return {
    cautions: withRenewed(input, cautionCards(home.trial.cautions, knowledge, kase.machine)),
    lines: [
      ...linesOf('put back first', putBackByPhone(input, apart)),
      ...linesOf('try it', [home.choke, ...starting]),
      ...stopNow(input),
      // What comes between an engine that runs and a machine under way stands before the last step.
      ...linesOf('try it', [...go, ...does.slice(starting.length)]),
    ],
  }
}
