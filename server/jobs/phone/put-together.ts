import { entry } from '../../diagnosis/model/named.ts'
import { coverId, hinders } from '../../knowledge/instantiate/setup-cards.ts'
import type { Step } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { perhapsApart } from './cut-off.ts'

/**
 * What goes back before an owner tries whether it runs: first all that is in the way of an engine that turns or runs.
 * A cover that is not goes on at the end, as hands may have to go below it; and what was made ready so that it can be
 * run, such as a leg in the water, stays as it is.
 */
export function putTogether({
  kase,
  knowledge,
  asItStands,
  walk,
}: Standing): readonly [first: Step[], covers: Step[]] {
  const asked = walk.step.kind === 'ask' ? walk.step.proposal.check : null
  const apart = perhapsApart({ kase, asItStands }, asked)
  const { setups } = knowledge.setups
  const coverOf = ({ setup: { id } }: Step) =>
    id.startsWith(coverId('')) ? kase.machine.access[id.slice(coverId('').length)] : undefined
  const turning = ['cranking', 'running'] as const
  const inTheWay = (step: Step): boolean => {
    const kit = setups[step.setup.id] ?? coverOf(step)
    return kit === undefined || hinders(kit, turning)
  }
  const servesRunning = (step: Step): boolean =>
    coverOf(step)?.for?.some((id) => !hinders(entry(setups, id), turning)) ?? false
  const covers = apart.filter(
    (step) => coverOf(step) !== undefined && !inTheWay(step) && !servesRunning(step),
  )
  return [apart.filter(inTheWay), covers]
}
