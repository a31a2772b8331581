import { fill, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Asked } from '../../standing/asked.ts'
import type { Standing } from '../../standing/standing.ts'
import { partNames } from '../../words/names.ts'
import { lowerFirst, sentence, the, upperFirst } from '../../words/sentences.ts'
import { coversOn, endOfBegun, lineCut } from '../cut-off.ts'
import { partsFound } from '../found.ts'
import { heardOnCall } from '../heard.ts'
import { cautionLines, linesOf, saying } from '../saying.ts'
import { stopFirst } from '../start/stop-first.ts'
import { trialOf } from '../start/trial.ts'
import type { DeedAnswer, Line, PhoneDeed } from '../view.ts'
import { coversOff } from './lies-covered.ts'
import { type Mending, partsOf } from './mending.ts'

/** To put it right, sentence by sentence, to try it, and what may come of it. */
export function presentPutRight(input: Standing & Asked, mending: Mending): PhoneDeed {
  const { job, line = 1 } = input
  return {
    title: mending.isDone ? 'Now it can be tried' : 'Put it right first',
    saying: saying(
      mendingLines(input, mending),
      line,
      (number) => `/jobs/${job.id}?line=${number}`,
    ),
    answers: mendingAnswers(input, mending),
    ...(mending.isDone ? {} : { leave: leaveMending(input, mending) }),
    cutOff: lineCut(job),
  }
}

/** What can hurt, how it is put right, and how it is tried. */
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
    ...stopFirst(input),
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
function about({ kase, walk }: Standing, { of, parts, fault }: Mending): string[] {
  const found = partsFound(walk.step)
  const part = fault === undefined ? kase.checks.get(of)?.part : parts[0]
  const card = kase.parts.get(part ?? '')
  const isSaid = fault !== undefined && found.length === 1 && found[0] === card?.id
  if (card === undefined || isSaid) return []
  const where = card.where === undefined ? [] : [`It sits here: ${lowerFirst(card.where)}`]
  const together = walk.step.kind === 'named' ? found.filter((each) => each !== card.id) : []
  return [
    `What can be put right there is ${the(card.name)}.`,
    ...where.map(sentence),
    ...(together.length > 0 ? [`${upperFirst(partNames(kase, together))} needs the same.`] : []),
  ]
}

/** Out of it, before its last sentence: nobody knows how far they had come. */
export const leaveMending = ({ job }: Standing, mending: Mending): DeedAnswer =>
  cameOf(job, mending)('not-done', 'They cannot do that')

const cameOf =
  ({ id }: Standing['job'], { of, fault }: Pick<Mending, 'of' | 'fault'>) =>
  (value: string, says: string): DeedAnswer => ({
    action: `/jobs/${id}/mendings`,
    fields: [
      { name: 'of', value: of },
      { name: 'choice', value },
      ...(fault === undefined ? [] : [{ name: 'fault', value: fault }]),
    ],
    says,
  })

/** What was put right and could not be tried then: that it is gone, once it was. */
export function goneSince({ job, kase, folded }: Standing): DeedAnswer[] {
  const done = [...folded.putRight].flatMap(([of, came]) => (came === 'done' ? of : []))
  const parts = done.flatMap((of) => partsOf(kase, of))
  return [...new Set(parts)].flatMap((part) => {
    const card = kase.parts.get(part)
    return card ? [goneAs(job, card, true)] : []
  })
}

const goneAs = (
  { id }: Standing['job'],
  part: { readonly id: string; readonly name: string },
  isNamed: boolean,
): DeedAnswer => ({
  action: `/jobs/${id}/repairs`,
  fields: [{ name: 'parts', value: part.id }],
  says: isNamed ? `It is gone, and it was ${the(part.name)}` : 'It is gone',
})

/** What may come of it: each with where it is sent, and as what. */
export function mendingAnswers(input: Standing, mending: Mending): DeedAnswer[] {
  const { job, kase } = input
  const cards = mending.parts.flatMap((part) => kase.parts.get(part) ?? [])
  const came = cameOf(job, mending)
  if (trialOf(input) === undefined) {
    return [came('done', 'It is done'), came('not-done', 'They cannot do that')]
  }
  return [
    ...cards.map((card) => goneAs(job, card, cards.length > 1)),
    came('still-there', 'It is still the same'),
    // What is done stays done, tried or not.
    ...(mending.isDone ? [] : [came('not-done', 'They cannot do that')]),
  ]
}
