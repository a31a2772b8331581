import type { SetupCard } from '../../../knowledge/case.ts'

export const namesOf = (setups: readonly SetupCard[]): ReadonlySet<string> =>
  new Set(setups.map(({ id }) => id))

export function without(setups: readonly SetupCard[], names: ReadonlySet<string>): SetupCard[] {
  return setups.filter(({ id }) => !names.has(id))
}
