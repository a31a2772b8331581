import { coverId, hinders } from '../../knowledge/instantiate/setup-cards.ts'
import { fill, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Standing } from './standing.ts'
import { putBackSentences } from './way/put-back.ts'
import { isForRun, servesRunning } from './way/serves-running.ts'
import { type Step, toPutBack } from './way/way-to.ts'

/** "Set it for work: stop switch at RUN.": it was switched off for every hand that went to it. */
export const setForWork = (machine: Standing['kase']['machine']): string =>
  fill('Set it for work: {start}.', fillingsOf(machine))

type Stands = Pick<Standing, 'asItStands' | 'kase'>
type ToRun = Stands & Pick<Standing, 'knowledge'>

/** How to put back what the checks left apart, off or fitted. */
export function stillApart({ asItStands, kase }: Stands): string[] {
  return putBackSentences(toPutBack(asItStands), kase.machine)
}

/** The same of what an owner by phone left so, who takes no drive off. */
export function apartByPhone(input: ToRun): string[] {
  const steps = toPutBack(input.asItStands).filter((step) => !isForRun(input, step))
  return putBackSentences(steps, input.kase.machine)
}

/** The same, but for what was made ready so that it can run, such as a pump that is full of water. */
export function beforeTheRun(input: ToRun): string[] {
  const steps = toPutBack(input.asItStands).filter((step) => !servesRunning(input, step))
  return putBackSentences(steps, input.kase.machine)
}

/** That which was: it goes back once it has been tried. */
export function afterTheRun(input: ToRun): string[] {
  const steps = toPutBack(input.asItStands).filter((step) => servesRunning(input, step))
  return putBackSentences(steps, input.kase.machine)
}

/**
 * What was fitted for a check and falsifies or hinders others, such as a tester in a cap or water on the leads: it goes
 * back before anything is repaired or read anew. How the stop is tried is said where the engine is started.
 */
export function fittedFirst({ asItStands, kase, knowledge }: ToRun): string[] {
  const { setups } = knowledge.setups
  const steps = toPutBack(asItStands).filter(({ setup }) => {
    const { spoils, tools } = setups[setup.id] ?? {}
    return spoils !== undefined && tools !== undefined
  })
  const { stop: _, ...machine } = kase.machine
  return putBackSentences(steps, machine)
}

/**
 * In four: what goes back first; the covers that may stay off while the engine is cranked, since nobody gets at a plug cap
 * through them; the drive that was off for checks, before it works as ever; and what the engine needs to run.
 *
 * @param cranked whether it is cranked at all before it runs; else all goes back first
 */
export function stillOff(
  input: ToRun,
  cranked: boolean,
): Readonly<Record<'first' | 'covers' | 'drive' | 'last', readonly string[]>> {
  const { machine } = input.kase
  const mayStay = Object.keys(machine.access).filter(
    (id) => cranked && !hinders(machine.access[id] ?? {}, ['cranking']),
  )
  const stays = new Set(mayStay.map(coverId))
  const steps = toPutBack(input.asItStands)
  const serves = (step: Step) => servesRunning(input, step)
  const said = (some: typeof steps) => putBackSentences(some, machine)
  return {
    first: said(steps.filter((step) => !stays.has(step.setup.id) && !serves(step))),
    covers: said(steps.filter((step) => stays.has(step.setup.id) && !serves(step))),
    drive: said(steps.filter((step) => isForRun(input, step))),
    last: said(steps.filter((step) => serves(step) && !isForRun(input, step))),
  }
}
