import { checkNamed } from '../../../diagnosis/belief/belief.ts'
import { numbered } from '../../../diagnosis/model/named.ts'
import type { Case } from '../../../knowledge/case.ts'
import type { FoundJob } from '../../standing/find.ts'

/**
 * The failures of a part that are put right by the same work as this one.
 *
 * @param also other parts that had the same done
 */
export function curedWith(
  { faults }: Pick<Case, 'faults'>,
  fault: string,
  also: readonly string[] = [],
): string[] {
  const { part = '', mend } = faults.get(fault) ?? {}
  const cured = [...faults.values()]
    .filter((each) => mend && each.part === part && each.mend?.phone.join() === mend.phone.join())
    .map(({ id }) => id)
  const others = also.flatMap((other) => cured.map((id) => sameOf(other, { id, part })))
  return [...cured, ...others.filter((id) => faults.has(id))]
}

/** Name of the failure of another part that fails in the same way. */
const sameOf = (other: string, { id, part }: { readonly id: string; readonly part: string }) =>
  `${other}${id.slice(part.length)}`

/**
 * The failures that are put right where an answer to a check told of something to put right: those of the parts that
 * it speaks of, where that answer is what they show most often.
 */
export function curedAsSeen({ kase, folded }: FoundJob, check: string): string[] {
  const card = kase.checks.get(check)
  const last = folded.readings.get(check)?.touches.at(-1)
  const answer = last?.kind === 'answer' ? last.answer : undefined
  const mend = card?.answers?.find(({ id }) => id === answer)?.mend
  if (card === undefined || mend === undefined || answer === undefined) return []
  const at = card.outcomes.indexOf(answer)
  const { chances } = checkNamed(kase.model, check)
  return kase.model.cutSets.flatMap(({ faults, parts }, c) => {
    const row = numbered(chances, c)
    const isIt = faults.length === 1 && parts.every((part) => mend.parts.includes(part))
    return isIt && row[at] === Math.max(...row) ? faults : []
  })
}

/** Those of these parts of the same kind that are put right in the same way. */
export function alikeOf(
  { faults, machine }: Pick<Case, 'faults' | 'machine'>,
  fault: { readonly id: string; readonly part: string },
  parts: readonly string[],
): string[] {
  const kindOf = (part: string) => machine.parts.find(({ id }) => id === part)?.kind
  return parts.filter(
    (part) =>
      part !== fault.part &&
      kindOf(part) === kindOf(fault.part) &&
      faults.get(sameOf(part, fault))?.mend !== undefined,
  )
}
