import type { Knowledge } from '../knowledge/knowledge.ts'
import type { ReadingCard } from '../knowledge/sheet/sheet.ts'
import { followsWarmth } from '../measure/correct/follows-warmth.ts'
import { byMeter } from '../measure/reading/settings.ts'
import { listed, upperFirst } from '../web/words.ts'
import type { AtHand } from './at-hand.ts'
import type { CircumstancesView } from './views.ts'

/**
 * The fields for what readings are seen under; beside one reading only those that bear on it, or that hold what could not
 * be taken. A gauge has no leads.
 */
export function presentCircumstances(
  { meters }: Knowledge,
  { typed, conditions, problems }: AtHand,
  card?: ReadingCard,
): CircumstancesView {
  const bears = bearsOn(card)
  const asked = (['meter', 'zero', 'air'] as const).filter(
    (name) => bears[name] || problems[name] !== undefined,
  )
  const names = asked.map((name) => fieldNames[name])
  return {
    says: upperFirst(listed(names)),
    isWrong: Object.keys(problems).length > 0,
    // What has no field here holds on the next page all the same.
    kept: (['meter', 'zero', 'air'] as const)
      .filter((name) => !asked.includes(name) && typed[name] !== '')
      .map((name) => ({ name, value: typed[name] })),
    ...(asked.includes('air') && {
      air: {
        value: typed.air,
        placeholder: '20',
        hint: '°C, unless you write °F.',
        ...(problems.air && { problem: problems.air }),
      },
    }),
    ...(asked.includes('zero') && {
      zero: { value: typed.zero, ...(problems.zero && { problem: problems.zero }) },
    }),
    ...(asked.includes('meter') && {
      meter: {
        choices: [...meters.values()].map(({ id, name }) => ({
          value: id,
          says: name,
          chosen: id === conditions.meter,
        })),
        ...(problems.meter && { problem: problems.meter }),
      },
    }),
  }
}

const fieldNames = { meter: 'meter', zero: 'leads', air: 'the air' } as const

function bearsOn(
  card: ReadingCard | undefined,
): Readonly<Record<keyof typeof fieldNames, boolean>> {
  if (card === undefined) return { meter: true, zero: true, air: true }
  const { quantity } = card.measurand
  return {
    meter: byMeter(quantity.setting),
    zero: quantity.touches.leads,
    air: followsWarmth(card.measurand),
  }
}
