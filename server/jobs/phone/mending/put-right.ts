import { fill, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import { type Asked, notListed } from '../../standing/asked.ts'
import type { Standing } from '../../standing/standing.ts'
import { partNames } from '../../words/names.ts'
import { lowerFirst, sentence, the, upperFirst } from '../../words/sentences.ts'
import { coversOn, endOfBegun, lineCut } from '../cut-off.ts'
import { partsFound } from '../found.ts'
import { heardOnCall } from '../heard.ts'
import { cautionLines, linesOf, saying } from '../saying.ts'
import { holdFirst, stopFirst } from '../start/stop-first.ts'
import { trialOf } from '../start/trial.ts'
import type { DeedAnswer, Line, PhoneDeed } from '../view.ts'
import { coversOff } from './lies-covered.ts'
import type { Mending } from './mending.ts'
import { elseTold, partsTold } from './told.ts'

/** To put it right, sentence by sentence, to try it, and what may come of it. */
export function presentPutRight(input: Standing & Asked, mending: Mending): PhoneDeed {
  const { job, line = 1 } = input
  return {
    title: mending.isDone ? 'Now it can be tried' : 'Put it right first',
    saying: saying(
      [...stopFirst(input), ...mendingLines(input, mending)],
      line,
      (number) => `/jobs/${job.id}?line=${number}`,
    ),
    answers: mendingAnswers(input, mending),
    ...(mending.isDone ? {} : { leave: leaveMending(input, mending) }),
    cutOff: lineCut(job),
  }
}

/** What can hurt, how it is put right, and how it is tried: all but that it is stopped first. */
export function mendingLines(input: Standing, mending: Mending): Line[] {
  const { phone, undoes, opens = [], cautions, isDone } = mending
  const trial = trialOf(input, undoes)
  const said = heardOnCall(input)
  const heard = new Set([...said, ...cautions.map(({ id }) => id)])
  const { off, covers } = input.knowledge.home
  const [before, after] = opens.includes(coversOff)
    ? [[fill(off, fillingsOf(input.kase.machine)), covers.before], [covers.after]]
    : [[], []]
  return [
    ...cautionLines(cautions, said),
    ...holdFirst(input),
    ...(isDone
      ? []
      : linesOf('put back first', [
          ...endOfBegun(input, input.asItStands),
          ...coversOn(input, input.asItStands),
        ])),
    ...(isDone
      ? []
      : linesOf('put right', [
          ...about(input, mending),
          ...before,
          ...phone.map(sentence),
          ...after,
        ])),
    ...(trial ? [...cautionLines(trial.cautions, heard), ...trial.lines] : []),
    { says: trial ? 'Is it gone now, or is it still the same?' : 'Is that done?', label: 'ask' },
  ]
}

/** What it is about and where that sits, unless that was said right before: it is not always what was named first. */
function about({ kase, walk }: Standing, { of, parts, fault, also = [] }: Mending): string[] {
  const found = partsFound(walk.step)
  const part = fault === undefined ? kase.checks.get(of)?.part : parts[0]
  const card = kase.parts.get(part ?? '')
  const isSaid = fault !== undefined && found.length === 1 && found[0] === card?.id
  if (card === undefined || isSaid) return []
  const where = card.where === undefined ? [] : [`It sits here: ${lowerFirst(card.where)}`]
  return [
    `What can be put right there is ${the(card.name)}.`,
    ...where.map(sentence),
    ...(also.length > 0
      ? [`${upperFirst(partNames(kase, also))} ${also.length > 1 ? 'need' : 'needs'} the same.`]
      : []),
  ]
}

/** Out of it, before its last sentence: nobody knows how far they had come. */
export const leaveMending = ({ job }: Standing, mending: Mending): DeedAnswer =>
  cameOf(job, mending)('not-done', 'They cannot do that')

const cameOf =
  ({ id }: Standing['job'], { of, fault, also }: Pick<Mending, 'of' | 'fault' | 'also'>) =>
  (value: string, says: string): DeedAnswer => ({
    action: `/jobs/${id}/mendings`,
    fields: [
      { name: 'of', value: of },
      { name: 'choice', value },
      ...(fault === undefined ? [] : [{ name: 'fault', value: fault }]),
      ...(also === undefined ? [] : [{ name: 'also', value: also.join('+') }]),
    ],
    says,
  })

/** What was put right and could not be tried then: that it is gone, once it was. */
export function goneSince(input: Standing): DeedAnswer[] {
  const { kase, folded } = input
  const done = [...folded.putRight].flatMap(([of, came]) => (came === 'done' ? of : []))
  const groups = done.flatMap((of) => {
    const parts = partsTold(input, of)
    return kase.parts.has(of) ? [parts] : parts.map((part) => [part])
  })
  const once = new Map(groups.map((parts) => [parts.join('+'), parts]))
  return [
    ...[...once.values()].map((parts) => goneAs(input, parts, true)),
    ...done.flatMap((of) => goneElse(input, of)),
  ]
}

/** It was no part of the tree, and is written down as they told it. */
function goneElse(input: Standing, of: string): DeedAnswer[] {
  const cause = elseTold(input, of)
  if (cause === undefined) return []
  const fields = [
    { name: 'parts', value: notListed },
    { name: 'cause', value: cause },
  ]
  return [{ action: `/jobs/${input.job.id}/repairs`, fields, says: 'It is gone, and that was it' }]
}

const goneAs = (
  { job, kase }: Pick<Standing, 'job' | 'kase'>,
  parts: readonly string[],
  isNamed: boolean,
): DeedAnswer => ({
  action: `/jobs/${job.id}/repairs`,
  fields: [{ name: 'parts', value: parts.join('+') }],
  says: isNamed ? `It is gone, and it was ${partNames(kase, parts)}` : 'It is gone',
})

/** What may come of it: each with where it is sent, and as what. */
export function mendingAnswers(input: Standing, mending: Mending): DeedAnswer[] {
  const { parts, also = [] } = mending
  const { job } = input
  const came = cameOf(job, mending)
  if (trialOf(input) === undefined) {
    return [came('done', 'It is done'), came('not-done', 'They cannot do that')]
  }
  return [
    ...parts.map((part) => goneAs(input, [part, ...also], parts.length > 1)),
    ...goneElse(input, mending.of),
    came('still-there', 'It is still the same'),
    // What is done stays done, tried or not.
    ...(mending.isDone ? [] : [came('not-done', 'They cannot do that')]),
  ]
}
