import type { CautionCard } from '../../knowledge/case.ts'
import { repairedInVain } from '../record/fold.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { sentence, the } from '../words/sentences.ts'
import { lineCut } from './cut-off.ts'
import { partsFound } from './found.ts'
import { heardOnCall } from './heard.ts'
import { cautionLines, linesOf, saying } from './saying.ts'
import { stopFirst } from './start/stop-first.ts'
import { trialOf } from './start/trial.ts'
import type { DeedAnswer, Line, PhoneDeed } from './view.ts'

/** Something that an owner can put right there and then, and that may have been it all. */
export interface Mending {
  /** The check whose answer told of it, or the part that is suspected. */
  readonly of: string
  /** How, in words for an owner. */
  readonly phone: readonly string[]
  /** The failure that it was told for, where a part is suspected. */
  readonly fault?: string
  /** Whose fault it was, if that cures it. */
  readonly parts: readonly string[]
  readonly cautions: readonly CautionCard[]
}

/** What an owner has seen that can be put right, and has not been told to yet; the latest first. */
export function mendingSeen({ kase, folded, judged }: Standing): Mending | undefined {
  if (folded.repairs.some(({ outcome }) => outcome === 'gone')) return undefined
  const inVain = repairedInVain(folded)
  const told = [...folded.readings].filter(([, { conditions }]) => conditions.who === 'owner')
  return told
    .toReversed()
    .flatMap(([check]): Mending[] => {
      const card = kase.checks.get(check)
      const reading = judged.get(check)?.reading
      const answer = reading?.kind === 'answer' ? reading.answer : undefined
      const mend = card?.answers?.find(({ id }) => id === answer)?.mend
      if (card === undefined || mend === undefined || folded.putRight.has(check)) return []
      if (mend.parts.some((part) => inVain.includes(part))) return []
      return [{ of: check, phone: [mend.phone], parts: mend.parts, cautions: card.cautions }]
    })
    .at(0)
}

/** To put it right, sentence by sentence, to try it, and what may come of it. */
export function presentPutRight(input: Standing & Asked, mending: Mending): PhoneDeed {
  const { job, line = 1 } = input
  return {
    title: 'Put it right first',
    saying: saying(
      mendingLines(input, mending),
      line,
      (number) => `/jobs/${job.id}?line=${number}`,
    ),
    answers: mendingAnswers(input, mending),
    cutOff: lineCut(job),
  }
}

/** What can hurt, how it is put right, and how it is tried. */
export function mendingLines(input: Standing, { phone, parts, cautions }: Mending): Line[] {
  const trial = trialOf(input)
  const said = heardOnCall(input)
  const heard = new Set([...said, ...cautions.map(({ id }) => id)])
  return [
    ...cautionLines(cautions, said),
    ...stopFirst(input),
    ...linesOf('put right', [...otherThanNamed(input, parts), ...phone.map(sentence)]),
    ...(trial ? [...cautionLines(trial.cautions, heard), ...trial.lines] : []),
    { says: trial ? 'Is it gone now, or is it still the same?' : 'Is that done?', label: 'ask' },
  ]
}

/** What can be put right there is not always what was named first. */
function otherThanNamed({ kase, walk }: Standing, parts: readonly string[]): string[] {
  const [first] = partsFound(walk.step)
  const [part] = parts
  if (first === undefined || part === undefined || parts.includes(first)) return []
  const name = kase.parts.get(part)?.name
  return name === undefined ? [] : [`What can be put right there is ${the(name)}.`]
}

/** What may come of it: each with where it is sent, and as what. */
export function mendingAnswers(input: Standing, { of, parts, fault }: Mending): DeedAnswer[] {
  const { job, kase } = input
  const cards = parts.flatMap((part) => kase.parts.get(part) ?? [])
  const came = (value: string, says: string): DeedAnswer => ({
    action: `/jobs/${job.id}/mendings`,
    fields: [
      { name: 'of', value: of },
      { name: 'choice', value },
      ...(fault === undefined ? [] : [{ name: 'fault', value: fault }]),
    ],
    says,
  })
  if (trialOf(input) === undefined) {
    return [came('done', 'It is done'), came('not-done', 'They cannot do that')]
  }
  return [
    ...cards.map(({ id, name }) => ({
      action: `/jobs/${job.id}/repairs`,
      fields: [{ name: 'parts', value: id }],
      says: cards.length === 1 ? 'It is gone' : `It is gone, and it was ${the(name)}`,
    })),
    came('still-there', 'It is still the same'),
    came('not-done', 'They cannot do that'),
  ]
}
