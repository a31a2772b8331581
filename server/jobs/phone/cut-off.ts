import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { phoneWords } from '../../knowledge/instantiate/setup-cards.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import type { CutOff } from '../record/fold.ts'
import { beforeTheCut } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { putBackByPhone } from '../standing/way/serves-running.ts'
import type { AsItStands } from '../standing/way/state.ts'
import { type Step, toPutBack } from '../standing/way/way-to.ts'
import { lowerFirst, sentence } from '../words/sentences.ts'
import { askedNow } from './asked-now.ts'
import { coversOff } from './mending/lies-covered.ts'
import { stopIfItRuns } from './start/stop-first.ts'
import type { PhonePage } from './view.ts'

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
 * How what was begun ends, in words for an owner: what a check has put back after its last question, plugs into their
 * own cylinders for instance, which no set-up knows of, and what was opened to put something right or to get home.
 *
 * @param asked the check that they may have begun by now, where it is one
 */
export function endOfBegun(
  { kase, knowledge }: Pick<Standing, 'kase' | 'knowledge'>,
  { half = [], open = [] }: AsItStands,
  asked: string | null = null,
): string[] {
  const checks = new Set(asked === null ? half : [asked, ...half])
  const end = [
    ...[...checks].flatMap((check) => endOf(kase, check)),
    ...Object.entries(knowledge.home.halfOpen).flatMap(([id, says]) =>
      open.includes(id) ? says : [],
    ),
  ]
  return end.length > 0 ? ['Unless it is so already, end what you had begun.', ...end] : []
}

/** The covers that came off for it, once all below them is closed. */
export const coversOn = (
  { knowledge }: Pick<Standing, 'knowledge'>,
  { open = [] }: AsItStands,
): string[] => (open.includes(coversOff) ? [knowledge.home.covers.after] : [])

function endOf({ checks, machine }: Standing['kase'], check: string): string[] {
  const { phone = [], setups = [], asked } = checks.get(check) ?? {}
  const last = phone.findLastIndex((says) => says.endsWith('?'))
  // What its set-ups put back, and how the stop is tried, is said of them.
  const ofSetups = setups.flatMap(({ undo }) => (undo ? sentencesIn(phoneWords(undo)) : []))
  const said = [...ofSetups, ...(machine.stop ? sentencesIn(machine.stop.try) : [])]
  return asked || last < 0 ? [] : phone.slice(last + 1).filter((says) => !said.includes(says))
}

/** Where it is sent that the line was cut. */
export const cutOffAction = ({ id }: Standing['job']): string => `/jobs/${id}/cut-offs`

/** The same, as the way out of something that is done. */
export const lineCut = (job: Standing['job']) => ({
  action: cutOffAction(job),
  says: 'The line was cut',
})

/** What to know of a way home that was begun: it may run, and what it takes apart may keep the switch from stopping it. */
function mayRunOn({ knowledge, kase }: Standing, name: string): string[] {
  const way = knowledge.home.ways[name]
  if (way === undefined) return []
  const { says, leaves = [], cautions } = way
  const ofLeaves = cautionCards(cautions, knowledge, kase.machine).filter(({ setups = [] }) =>
    setups.some((id) => leaves.includes(id)),
  )
  return [
    sentence(`What we were trying when we lost each other: ${lowerFirst(says)}`),
    ...ofLeaves.flatMap(({ phone }) => sentencesIn(phone)),
    stopIfItRuns,
  ]
}

/**
 * What goes back after the line was cut, or a way home left half done, last made first.
 *
 * @param keeps names of the set-ups that what comes next leaves apart
 */
export function backAfterCut(
  input: Standing,
  { way }: CutOff,
  keeps: readonly string[] = [],
): readonly string[] {
  const { kase, job, knowledge } = input
  const before = beforeTheCut(kase, job)
  const { ways, covers } = knowledge.home
  return [
    ...endOfBegun(input, before),
    ...putBackByPhone(
      input,
      toPutBack(before).filter(({ setup }) => !keeps.includes(setup.id)),
    ),
    ...(ways[way ?? '']?.uncovers ? [covers.after] : coversOn(input, before)),
  ]
}

/**
 * What to ask first when they ring again after the line went dead: nobody knows how far they had come. Nothing
 * where it did not, or where something was taken since.
 */
export function afterCutOff(input: Standing): PhonePage['again'] {
  const { folded, knowledge } = input
  if (folded.cutOff === undefined) return undefined
  const { at, way } = folded.cutOff
  const back = backAfterCut(input, folded.cutOff)
  const says = [
    'Are you safe, warm and out of the way of others?',
    ...(folded.conditions.afloat ? knowledge.home.afloat.first : []),
    ...(way === undefined ? [] : mayRunOn(input, way)),
    ...(way === undefined ? [stopIfItRuns] : []),
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
  const hasRung = input.job.events.at(-1)?.event.kind === 'cut off'
  return {
    title: hasRung ? 'When they ring again, first ask:' : 'Before anything else, ask:',
    says,
  }
}
