import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import type { CheckOnPage } from './page.ts'
import { drawWorld } from './world/draw.ts'
import type { World } from './world/world.ts'

/** A machine of the case with nothing wrong. */
export function goodMachine(knowledge: Knowledge, kase: Case): World {
  return { ...drawWorld(knowledge, kase, 3, '20'), faults: [], elsewhere: false }
}

/** A page that has a check made and says nothing of what was left apart before. */
export function pageOf(card: CheckCard): CheckOnPage {
  return {
    id: card.id,
    title: card.title,
    standing: '',
    setups: card.setups.map((setup) => setup.do),
    steps: card.do,
    words: card.do.join(' '),
    minutes: card.minutes,
    form: {
      action: '',
      isMeasured: card.measurand !== undefined,
      answers: card.answers?.map((answer) => answer.id) ?? [],
      fields: {},
      warmths: [],
      problem: null,
    },
    accept: null,
    skip: null,
  }
}
