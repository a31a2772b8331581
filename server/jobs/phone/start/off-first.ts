import { fill, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Standing } from '../../standing/standing.ts'
import { isRunFirst, type Way } from '../../standing/way/way-to.ts'
import { sentence } from '../../words/sentences.ts'
import type { Line } from '../view.ts'

/**
 * What goes back and is made ready, once it cannot start: before the first hand, and not only where a set-up says so.
 * What says so anew is left out until it has been run for the check.
 */
export function offFirst(
  { kase: { machine }, knowledge }: Pick<Standing, 'kase' | 'knowledge'>,
  way: Pick<Way, 'make' | 'still'>,
  lines: readonly Line[],
): readonly Line[] {
  const [first] = lines
  if (first === undefined) return lines
  const off = sentence(fill(knowledge.home.off, fillingsOf(machine)))
  const runs = isRunFirst(way)
  return [
    { says: off, label: first.label },
    ...lines.filter(({ says }, i) => says !== off || (runs && i > 0)),
  ]
}
