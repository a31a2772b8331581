import type { Standing } from '../../standing/standing.ts'

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
