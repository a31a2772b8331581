import type { Knowledge } from '../knowledge/knowledge.ts'
import type { AtHand } from './at-hand.ts'
import type { CircumstancesView } from './views.ts'

/** The fields for what the readings are seen under. */
export function presentCircumstances(
  { meters }: Knowledge,
  { typed, conditions, problems }: AtHand,
): CircumstancesView {
  return {
    air: {
      value: typed.air,
      placeholder: '20',
      hint: '°C, unless you write °F.',
      ...(problems.air && { problem: problems.air }),
    },
    zero: { value: typed.zero, ...(problems.zero && { problem: problems.zero }) },
    meters: [...meters.values()].map(({ id, name }) => ({
      value: id,
      says: name,
      chosen: id === conditions.meter,
    })),
    ...(problems.meter && { meterProblem: problems.meter }),
  }
}
