import { type Step, toPutBack } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { putBackByPhone } from './start/serves-running.ts'

/** What is apart, and what a check that was begun may have taken apart: nobody knows how far they had come. */
export function perhapsApart(
  { kase, asItStands }: Pick<Standing, 'kase' | 'asItStands'>,
  check: string | null,
): Step[] {
  const apart = toPutBack(asItStands)
  const begun = (kase.checks.get(check ?? '')?.setups ?? [])
    .filter(({ id, undo }) => undo !== undefined && !apart.some(({ setup }) => setup.id === id))
    .map((setup) => ({ setup, unsure: true }))
  return [...begun, ...apart]
}

/** Where it is sent that the line was cut. */
export const cutOffAction = ({ id }: Standing['job']): string => `/jobs/${id}/cut-offs`

/**
 * What to ask first when they ring again after the line went dead: nobody knows how far they had come. Nothing
 * where it did not, or where something was taken since.
 */
export function afterCutOff(input: Standing): readonly string[] | undefined {
  const { folded } = input
  if (folded.cutOff === undefined) return undefined
  const back = putBackByPhone(input, perhapsApart(input, folded.cutOff.at))
  return [
    'Are you safe, warm and out of the way of others?',
    'Where is the switch now? Set it to OFF, before anything else.',
    ...(back.length > 0 ? ['Is one of these still apart or off?', ...back] : []),
    'Is every cap on its plug, and every fuse in its holder?',
    folded.cutOff.at === null
      ? 'Then we begin again from the first sentence.'
      : 'Then we begin this check again from its first sentence.',
  ]
}
