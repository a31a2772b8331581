import { type Asked, notListed } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { upperFirst } from '../words/sentences.ts'
import type { RepairView, WrittenView } from './view.ts'

/** What may be written down beside a repair of these parts, with what was typed or taken back. */
export function presentWritten(
  { kase, job, repairRefused }: Standing & Asked,
  parts: readonly string[],
): WrittenView {
  const { problem } = repairRefused ?? {}
  const { fault, note = '', price = '', minutes = '' } = repairRefused ?? takenBack(job) ?? {}
  const [part] = parts
  return {
    faults: [...kase.faults.values()]
      .filter((each) => parts.length === 1 && each.part === part)
      .map(({ id, says }) => ({ id, says: upperFirst(says), chosen: id === fault })),
    open: repairRefused !== undefined,
    note,
    price,
    minutes: String(minutes),
    ...(problem && { problem }),
  }
}

/** What was written of a repair that was taken back, to be written down anew: nothing typed is lost. */
function takenBack({ events }: Standing['job']) {
  const all = events.map(({ event }) => event)
  const last = all.findLast(({ kind }) => kind === 'repaired' || kind === 'repair withdrawn')
  if (last?.kind !== 'repair withdrawn') return undefined
  const before = all.findLast((event) => event.kind === 'repaired')
  return before?.kind === 'repaired' ? before : undefined
}

export const elseWords = 'It was something else'
export const elseSays = 'Write down what it was; the page then says how to prove it.'

/** The form of what is no part of the tree: it has to be said in words. */
export const writtenElse = (
  input: Standing & Asked,
): Pick<RepairView, 'parts' | 'written' | 'buttons'> => ({
  parts: notListed,
  written: { ...presentWritten(input, []), cause: causeTyped(input) },
  buttons: [{ name: 'choice', value: 'repaired', says: elseWords }],
})

const causeTyped = ({ job, repairRefused }: Standing & Asked): string =>
  (repairRefused ?? takenBack(job))?.cause ?? ''
