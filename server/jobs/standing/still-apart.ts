import { coverId, hinders } from '../../knowledge/instantiate/setup-cards.ts'
import type { Standing } from './standing.ts'
import { putBackSentences } from './way/put-back.ts'
import { toPutBack } from './way/way-to.ts'

type Stands = Pick<Standing, 'asItStands' | 'kase'>

/** How to put back what the checks left apart, off or fitted. */
export function stillApart({ asItStands, kase }: Stands): string[] {
  return putBackSentences(toPutBack(asItStands), kase.machine)
}

/**
 * The same in two: what goes back first, and the covers that may stay off while the engine is cranked, since nobody
 * gets at a plug cap through them.
 *
 * @param cranked whether it is cranked at all before it runs; else all goes back first
 */
export function stillOff(
  { asItStands, kase }: Stands,
  cranked: boolean,
): { readonly first: readonly string[]; readonly covers: readonly string[] } {
  const { machine } = kase
  const mayStay = Object.keys(machine.access).filter(
    (id) => cranked && !hinders(machine.access[id] ?? {}, ['cranking']),
  )
  const stays = new Set(mayStay.map(coverId))
  const steps = toPutBack(asItStands)
  const said = (some: typeof steps) => putBackSentences(some, machine)
  return {
    first: said(steps.filter(({ setup }) => !stays.has(setup.id))),
    covers: said(steps.filter(({ setup }) => stays.has(setup.id))),
  }
}
