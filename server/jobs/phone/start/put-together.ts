import { hinders } from '../../../knowledge/instantiate/setup-cards.ts'
import type { Standing } from '../../standing/standing.ts'
import { coverOf, servesRunning, turning } from '../../standing/way/serves-running.ts'
import type { Step } from '../../standing/way/way-to.ts'
import { perhapsApart } from '../cut-off.ts'

/**
 * What goes back before an owner tries whether it runs: first all that is in the way of an engine that turns or runs.
 * A cover that is not goes on at the end, as hands may have to go below it; and what was made ready so that it can be
 * run, such as a leg in the water, stays as it is.
 *
 * @param asked the check that they may have begun, if any
 */
export function putTogether(
  input: Pick<Standing, 'kase' | 'knowledge' | 'asItStands'>,
  asked: string | null,
): readonly [first: Step[], covers: Step[]] {
  const { kase, knowledge } = input
  const apart = perhapsApart(input, asked)
  const { setups } = knowledge.setups
  const inTheWay = (step: Step): boolean => {
    const kit = setups[step.setup.id] ?? coverOf(kase, step)
    return kit === undefined || hinders(kit, turning)
  }
  const covers = apart.filter(
    (step) => coverOf(kase, step) !== undefined && !inTheWay(step) && !servesRunning(input, step),
  )
  return [apart.filter(inTheWay), covers]
}
