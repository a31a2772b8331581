import type { Suspect, Walk } from '../../diagnosis/model/walk.ts'
import { presentProspects } from '../../jobs/check/prospects.ts'
import { presentRival } from '../../jobs/check/rival.ts'
import type { ProspectRow } from '../../jobs/check/view.ts'
import type { Fact } from '../../jobs/words/fact.ts'
import { partNames, suspectName } from '../../jobs/words/names.ts'
import {
  listed,
  minutes,
  percent,
  sentence,
  titleOf,
  upperFirst,
} from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import { gainWords } from './gain-words.ts'
import type { Lesson, Order } from './order.ts'

/** One check of the order, as the page teaches it. */
export interface LessonView {
  readonly id: string
  readonly title: string
  readonly facts: readonly Fact[]
  /** The line, and what an old hand says. */
  readonly why: string
  readonly teach: string
  /** Why not another one. */
  readonly rival: string
  /** "Halves the list: …" */
  readonly tells: string
  readonly answers: readonly ProspectRow[]
  /** What "Clears" means, a sentence, where an answer says it for the first time. */
  readonly clears?: string
  readonly shares: readonly Shares[]
}

/** The likeliest suspects at one moment. */
export interface Shares {
  readonly when: string
  readonly rows: readonly {
    readonly name: string
    readonly percent: string
  }[]
}

export function presentLessons({ kase, lessons, after }: Order): LessonView[] {
  const views = lessons.map((lesson, i) =>
    presentLesson(kase, lesson, i, lessons[i + 1]?.walk ?? after),
  )
  const first = views.find(({ answers }) => answers.some(({ effect }) => /\bClears: /.test(effect)))
  return views.map((view) => (view === first ? { ...view, clears: clearsWords } : view))
}

const clearsWords =
  '“Clears” names the suspects that this answer lets go: each is less likely than 1 in 100 from then on, until a later reading brings it back.'

function presentLesson(kase: Case, lesson: Lesson, i: number, next: Walk): LessonView {
  const { card, again, proposal, walk, foreseen } = lesson
  return {
    id: `check-${i + 1}`,
    title: titleOf(card.title, again),
    facts: [
      { label: 'Costs', value: minutes(proposal.minutes) },
      { label: 'Engine', value: engineWords[card.engine] },
      {
        label: 'Tools',
        value: upperFirst(listed(card.tools.map(({ name }) => name))) || 'Hands and eyes',
      },
    ],
    why: again
      ? 'The last reading matters much, and a slip would have led astray.'
      : sentence(card.why),
    teach: again ? '' : (card.teach ?? ''),
    rival: presentRival({ kase, walk }, card.id),
    tells: gainWords(walk.suspects, proposal.bits),
    answers: presentProspects(kase, card, foreseen),
    shares: [
      sharesOf(kase, 'Before', walk.suspects),
      sharesOf(kase, 'After the likeliest answer', next.suspects),
    ],
  }
}

const engineWords = { stopped: 'Stopped', cranking: 'Cranked', running: 'Running' } as const

/** So many suspects are named. */
const mostNamed = 4

function sharesOf(kase: Case, when: string, suspects: readonly Suspect[]): Shares {
  return {
    when,
    rows: suspects.slice(0, mostNamed).map(({ part, probability }) => ({
      name: upperFirst(suspectName(kase, part)),
      percent: percent(probability),
    })),
  }
}

/** How it goes on after the last check that is taught. */
export function afterWords({ kase, after }: Order): string {
  switch (after.step.kind) {
    case 'ask':
      return 'From here every machine goes its own way, by what has been read.'
    case 'named':
      return sentence(`That names ${partNames(kase, after.step.parts)}`)
    case 'cannotSeparate':
      return sentence(
        `No check tells these apart now: ${after.step.group.map(({ part }) => suspectName(kase, part)).join('; ')}`,
      )
    case 'outsideThisTree':
      return sentence(`Then it is likely none of the parts here. ${kase.complaint.elsewhere.says}`)
    case 'contradiction':
      return 'Then the readings contradict each other, and one of them is made again.'
  }
}
