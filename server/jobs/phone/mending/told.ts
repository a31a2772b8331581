import type { Standing } from '../../standing/standing.ts'
import { curedAsSeen } from './cures.ts'

type Known = Pick<Standing, 'job' | 'kase'>

/** What was put right there: the part, or those that the answers to the check speak of. */
function partsOf({ checks }: Standing['kase'], of: string): string[] {
  const { part, answers = [] } = checks.get(of) ?? { part: of }
  return [
    ...(part === undefined ? [] : [part]),
    ...answers.flatMap(({ mend }) => mend?.parts ?? []),
  ]
}

/** The same of what was suspected, with those that were named together with it and had the same done. */
export function partsTold({ job, kase }: Known, of: string): string[] {
  const said = job.events.findLast(({ event }) => event.kind === 'put right' && event.of === of)
  const cures = said?.event.kind === 'put right' ? (said.event.cures ?? []) : []
  const cured = cures.flatMap((fault) => kase.faults.get(fault)?.part ?? [])
  return [...new Set([...partsOf(kase, of), ...cured])]
}

/** How what the answer to a check told of is put right, where it can be. */
export const mendOf = (known: Told, check: string) => answerTo(known, check)?.mend

type Told = Pick<Standing, 'kase' | 'judged'>

function answerTo({ kase, judged }: Told, check: string) {
  const reading = judged.get(check)?.reading
  const answer = reading?.kind === 'answer' ? reading.answer : undefined
  return kase.checks.get(check)?.answers?.find(({ id }) => id === answer)
}

/** What it was, where an answer to the check told of what is no part of the tree: as the answer says it. */
export function elseTold({ kase, judged }: Told, check: string): string | undefined {
  const answer = answerTo({ kase, judged }, check)
  return answer?.mend?.elsewhere && answer.says
}

/** The same work was told before at the same place and done: in the same words, or for a suspected failure that it cures. */
export function wasDone(
  input: Standing,
  check: string,
  { phone, parts }: { readonly phone: string; readonly parts: readonly string[] },
): boolean {
  const { kase, folded } = input
  const cures = curedAsSeen(input, check)
  const done = [...folded.putRight].flatMap(([of, came]) => (came === 'not done' ? [] : [of]))
  const isSuspected = done.some((of) => kase.parts.has(of))
  return (
    done.some((of) => {
      const told = mendOf(input, of)
      return told?.phone === phone && told.parts.join() === parts.join()
    }) ||
    (isSuspected && cures.length > 0 && cures.every((fault) => folded.cured.includes(fault)))
  )
}
