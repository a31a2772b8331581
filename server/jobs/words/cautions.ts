import type { CautionCard } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Conditions } from '../record/events.ts'

/** Cautions that stand on every page that instructs: everywhere, at this place, with a hot engine. */
export function shownCautions(
  { cautions: { cautions } }: Knowledge,
  { where, engine }: Conditions,
): CautionCard[] {
  return Object.entries(cautions)
    .filter(([, c]) => c.everywhere || c.place === where || (c.hot && engine === 'hot'))
    .map(([id, { signal, says, phone }]) => ({ id, signal, says, phone }))
}

const gravity: readonly CautionCard['signal'][] = ['danger', 'warning', 'caution', 'notice']

/** The gravest first. */
export function byGravity(cautions: readonly CautionCard[]): CautionCard[] {
  return cautions.toSorted((a, b) => gravity.indexOf(a.signal) - gravity.indexOf(b.signal))
}
