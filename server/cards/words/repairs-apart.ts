import type { RepairView, StageView } from '../card.ts'
import { lettersIn } from './letters.ts'

/** Letters from which the folds of a card grow too heavy for a page to send to a phone; found by making cards. */
const most = 100_000

/** A card whose endings hold their repairs or, where those are too many, with each repair once below the steps. */
export function repairsApart(first: StageView): {
  readonly first: StageView
  readonly repairs: readonly RepairView[]
} {
  if (lettersIn(first) <= most) return { first, repairs: [] }
  const repairs = new Map<string, RepairView>()
  return { first: withoutRepairs(first, repairs), repairs: [...repairs.values()] }
}

function withoutRepairs(stage: StageView, repairs: Map<string, RepairView>): StageView {
  if (stage.kind === 'step') {
    const answers = stage.answers.map((answer) => ({
      ...answer,
      next: withoutRepairs(answer.next, repairs),
    }))
    return { ...stage, answers }
  }
  const { repaired: name, heed, where, repair } = stage
  if (repair === '') return stage
  repairs.set(name, { name, heed, where, repair })
  return { ...stage, heed: [], where: '', repair: '' }
}
