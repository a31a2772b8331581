import { entry } from '../../../diagnosis/model/named.ts'
import { coverId, hinders } from '../../../knowledge/instantiate/setup-cards.ts'
import type { Standing } from '../standing.ts'
import { putBackSentences } from './put-back.ts'
import { type Step, toPutBack } from './way-to.ts'

type Known = Pick<Standing, 'kase' | 'knowledge'>

/** It was made ready so that the engine can run, such as a leg in the water, and stays so while it does. */
export function servesRunning({ kase, knowledge }: Known, step: Step): boolean {
  const { setups } = knowledge.setups
  const serves = (id: string) => !hinders(entry(setups, id), turning)
  return isForRun({ knowledge }, step) || (coverOf(kase, step)?.for?.some(serves) ?? false)
}

/** The same of what no owner does by phone: nobody finds it so after a call. */
export const isForRun = ({ knowledge }: Pick<Known, 'knowledge'>, { setup }: Step): boolean =>
  knowledge.setups.setups[setup.id]?.forRun === true

/**
 * How what is apart is put back, in words for an owner; what serves a run stays, for nobody would be told to make it
 * ready again.
 *
 * @param apart left out: all that the checks left apart, off or fitted
 */
export function putBackByPhone(
  input: Known & Pick<Standing, 'asItStands'>,
  apart: readonly Step[] = toPutBack(input.asItStands),
): string[] {
  const steps = apart.filter((step) => !servesRunning(input, step))
  return putBackSentences(steps, input.kase.machine, 'by phone')
}

export const turning = ['cranking', 'running'] as const

export const coverOf = ({ machine }: Standing['kase'], { setup: { id } }: Step) =>
  id.startsWith(coverId('')) ? machine.access[id.slice(coverId('').length)] : undefined
