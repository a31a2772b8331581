import { presentWholeTree } from '../jobs/beside/tree-drawing.ts'
import { type CautionsView, cautionsView } from '../jobs/words/cautions/cautions.ts'
import { upperFirst } from '../jobs/words/sentences.ts'
import { fits } from '../knowledge/fits.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Complaint } from '../knowledge/schema/index.ts'
import { type MistakeTable, presentMistakes } from './mistakes/present.ts'
import type { Order } from './order/order.ts'
import { afterWords, type LessonView, presentLessons } from './order/present-lesson.ts'
import { wordsIn } from './words/found.ts'
import { learnHref, practiseHref, wordsHref } from './words/hrefs.ts'
import { presentWord, type WordView } from './words/present.ts'

/** What one complaint on one machine has to teach. */
export interface ComplaintPage {
  readonly title: string
  readonly owner: string
  readonly machine: string
  readonly machines: readonly MachineWay[]
  readonly practiseHref: string
  readonly cautions: CautionsView
  readonly lessons: readonly LessonView[]
  readonly after: string
  /** What the tree holds no part of. */
  readonly elsewhere: string
  readonly drawing: string
  readonly mistakes: readonly MistakeTable[]
  readonly words: readonly WordView[]
  readonly wordsHref: string
}

interface MachineWay {
  readonly href: string
  readonly text: string
  readonly current: boolean
}

export function presentComplaint(knowledge: Knowledge, order: Order): ComplaintPage {
  const { kase, lessons } = order
  const { machine, complaint } = kase
  const [first] = lessons
  const views = presentLessons(order)
  const mistakes = presentMistakes(knowledge, kase)
  return {
    title: complaint.title,
    owner: complaint.owner,
    machine: machineName(machine),
    machines: waysTo(knowledge, complaint, machine.id),
    practiseHref: practiseHref(machine.id, complaint.id),
    cautions: cautionsView(lessons.flatMap(({ card }) => card.cautions)),
    lessons: views,
    after: afterWords(order),
    elsewhere: upperFirst(complaint.elsewhere.says),
    drawing: presentWholeTree({ kase, walk: first?.walk ?? order.after }, first?.foreseen ?? []),
    mistakes,
    words: wordsIn(knowledge, textOf(views, mistakes)).map((word) => presentWord(knowledge, word)),
    wordsHref,
  }
}

function waysTo({ machines }: Knowledge, complaint: Complaint, chosen: string): MachineWay[] {
  return [...machines.values()]
    .filter((machine) => fits(complaint, machine))
    .map((machine) => ({
      href: learnHref(complaint.id, machine.id),
      text: machineName(machine),
      current: machine.id === chosen,
    }))
}

/** All that the page says in sentences. */
function textOf(lessons: readonly LessonView[], mistakes: readonly MistakeTable[]): string {
  const taught = lessons.flatMap(({ title, why, teach, facts, answers }) => [
    ...[title, why, teach],
    ...facts.map(({ value }) => value),
    ...answers.flatMap(({ answer, effect }) => [answer, effect]),
  ])
  return [...taught, ...mistakes.map(({ title }) => title)].join(' ')
}
