import { toPutBack } from '../standing/as-it-stands.ts'
import { putBackSentences } from '../standing/put-back.ts'
import type { Standing } from '../standing/standing.ts'

/**
 * What to ask first when they ring again after the line went dead: nobody knows how far they had come. Nothing
 * where it did not, or where something was taken since.
 */
export function afterCutOff(input: Standing): readonly string[] | undefined {
  const { folded, kase, asItStands } = input
  if (folded.cutOff === undefined) return undefined
  const card = kase.checks.get(folded.cutOff.at ?? '')
  const apart = [...toPutBack(asItStands)]
  const begun = (card?.setups ?? [])
    .filter(({ id, undo }) => undo !== undefined && !apart.some(({ setup }) => setup.id === id))
    .map((setup) => ({ setup, unsure: true }))
  const back = putBackSentences([...begun, ...apart], kase.machine)
  return [
    'Are you safe, warm and out of the way of others?',
    'Where is the switch now? Set it to OFF, and leave everything as it is.',
    ...(back.length > 0 ? ['Is one of these still apart or off?', ...back] : []),
    'Then we begin this check again from its first sentence.',
  ]
}
