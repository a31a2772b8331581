import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { phoneWords } from '../../knowledge/instantiate/setup-cards.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import { asItStands, type Step, toPutBack } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import type { AsItStands } from '../standing/way/state.ts'
import { askedNow } from './asked-now.ts'
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
    .toReversed()
  return [...begun, ...apart]
}

/**
 * How a check that was begun ends, in words for an owner: what it has put back after its last question, plugs into their
 * own cylinders for instance, which no set-up knows of.
 */
export function endOfBegun({ checks, machine }: Standing['kase'], check: string | null): string[] {
  const { phone = [], setups = [], asked } = checks.get(check ?? '') ?? {}
  const last = phone.findLastIndex((says) => says.endsWith('?'))
  // What its set-ups put back, and how the stop is tried, is said of them.
  const ofSetups = setups.flatMap(({ undo }) => (undo ? sentencesIn(phoneWords(undo)) : []))
  const said = [...ofSetups, ...(machine.stop ? sentencesIn(machine.stop.try) : [])]
  const end = asked || last < 0 ? [] : phone.slice(last + 1).filter((says) => !said.includes(says))
  return end.length > 0 ? ['Unless it is so already, end what you had begun.', ...end] : []
}

/** Where it is sent that the line was cut. */
export const cutOffAction = ({ id }: Standing['job']): string => `/jobs/${id}/cut-offs`

/** The same, as the way out of something that is done. */
export const lineCut = (job: Standing['job']) => ({
  action: cutOffAction(job),
  says: 'The line was cut',
})

/** As it stood when the line went dead, with what may be apart by then; afterwards it counts as put together. */
function beforeCut({ kase, job, folded: { cutOff } }: Standing): AsItStands {
  const events = job.events.slice(0, -1)
  const { way, leaves } = cutOff ?? {}
  const at = job.events.at(-1)?.at
  const half =
    way === undefined || at === undefined
      ? []
      : [{ event: { kind: 'tried', way, helped: false, brokenOff: true, leaves } as const, at }]
  return asItStands(kase, { ...job, events: [...events, ...half] })
}

/** What to know of a way home that was begun, while what it takes apart may keep the switch from stopping it. */
function mayRunOn({ knowledge, kase }: Standing, name: string): string[] {
  const way = knowledge.home.ways[name]
  if (way?.leaves === undefined) return []
  const { leaves, cautions } = way
  return cautionCards(cautions, knowledge, kase.machine)
    .filter(({ setups = [] }) => setups.some((id) => leaves.includes(id)))
    .flatMap(({ phone }) => sentencesIn(phone))
}

/**
 * What to ask first when they ring again after the line went dead: nobody knows how far they had come. Nothing
 * where it did not, or where something was taken since.
 */
export function afterCutOff(input: Standing): readonly string[] | undefined {
  const { folded, kase, knowledge } = input
  if (folded.cutOff === undefined) return undefined
  const { at, way } = folded.cutOff
  const apart = putBackByPhone(input, perhapsApart({ kase, asItStands: beforeCut(input) }, at))
  const back = [...endOfBegun(kase, at), ...apart]
  return [
    'Are you safe, warm and out of the way of others?',
    ...(folded.conditions.afloat ? knowledge.home.afloat.first : []),
    ...(way === undefined ? [] : mayRunOn(input, way)),
    'Where is the switch now? Set it to OFF, before anything else.',
    ...(back.length > 0
      ? [
          'What is still apart or off goes back now, in this order. Leave what is back already.',
          ...back,
        ]
      : []),
    'Is every spark plug screwed in, every cap on its own plug, and all else in its place?',
    at === null || at !== askedNow(input)
      ? 'Then we begin again from the first sentence.'
      : 'Then we begin this check again from its first sentence.',
  ]
}
