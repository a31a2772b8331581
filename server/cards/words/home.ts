import type { Walk } from '../../diagnosis/model/walk.ts'
import { stepsOf } from '../../jobs/phone/home/way-steps.ts'
import { neverOf, waysHome } from '../../jobs/phone/home/ways.ts'
import { listed, lowerFirst, sentence } from '../../jobs/words/sentences.ts'
import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { fillAll, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { CautionPanel, HomeView } from '../card.ts'
import { isOwner } from '../drawing/tools.ts'
import { heedByNumber, heedOf, numbersIn, type Wording } from './check-words.ts'

/** How to get home with this complaint: what may be tried with what is at hand, and when to stay. */
export function homeView(
  { knowledge, kase, tools }: Wording,
  walk: Walk,
  panels: readonly CautionPanel[],
): HomeView {
  const numberOf = numbersIn(panels)
  const { kit = [] } = tools.conditions
  const fillings = fillingsOf(kase.machine)
  const ways = waysHome({ knowledge, kase, walk }).map(([, way]) => ({
    ...way,
    lacking: isOwner(tools) ? (way.kit ?? []).filter((each) => !kit.includes(each)) : [],
  }))
  return {
    ways: ways
      .filter(({ lacking }) => lacking.length === 0)
      .map((way) => ({ ...way, steps: stepsOf(way, knowledge.home) }))
      .map((way) => ({ ...way, heed: heedOf(cautionCards(way.cautions, knowledge, kase.machine)) }))
      .map(({ says, kit: needed = [], steps, danger, heed }) => ({
        says,
        needs: listed(needed.map((each) => lowerFirst(knowledge.owner.kit[each]?.asks ?? each))),
        heed,
        heedNumbers: heed.every(({ id }) => numberOf.has(id)) ? heedByNumber(heed, numberOf) : '',
        steps: fillAll(
          [...steps.before, ...steps.covered, ...steps.start, ...steps.after],
          fillings,
        ),
        danger: sentence(danger),
      })),
    never: neverOf(kase, knowledge),
    stay: knowledge.home.stay,
  }
}
