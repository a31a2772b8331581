import type { Case } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { partNamed } from '../../server/practice/world/sheet.ts'
import type { JobRecord } from './record.ts'

/** What the first verdict of a job came to, and what it had cost. */
export type FirstVerdict = Pick<
  JobRecord,
  'outcome' | 'dear' | 'named' | 'stated' | 'checks' | 'minutes'
>

/** A part from this price on is a dear one, in the currency of `trees/parts/`. */
const dearFrom = 100

/**
 * Right, where every part that is named has failed, or none is named and none of the tree has.
 *
 * @param named null where there is no verdict; no parts where it says that the cause lies in no tree
 */
export function judge(
  knowledge: Knowledge,
  { machine }: Case,
  truth: readonly string[],
  named: readonly string[] | null,
): Pick<FirstVerdict, 'outcome' | 'dear'> {
  if (named === null) return { outcome: 'undecided', dear: false }
  const good = named.filter((part) => !truth.includes(part))
  const isRight = named.length > 0 ? good.length === 0 : truth.length === 0
  const price = (part: string) =>
    knowledge.partKinds.get(partNamed(machine, part).kind)?.cost?.price ?? 0
  return {
    outcome: isRight ? 'right' : 'wrong',
    dear: good.some((part) => price(part) >= dearFrom),
  }
}

/** "part named, 93 %" is 0.93; "> 99 %" is taken as 0.995. */
export function statedIn(stamp: string): number | null {
  const [, over, percent] = /([<>]?)\s*(\d+)\s*%/.exec(stamp) ?? []
  if (percent === undefined) return null
  return over === '>' ? 0.995 : Number(percent) / 100
}
