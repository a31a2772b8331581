import type { ReadingForm } from '../../server/jobs/check/view.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { namedFault } from './hidden-fault.ts'

/** Everything by which the form of one check differs from that of another. */
export const kindsOfForm = [
  'an answer',
  'resistance',
  'isolation',
  'ac-voltage',
  'peak-voltage',
  'a button for OL',
  'how warm',
  'how fast',
  'one more take',
]

/** The kinds that the form of a check is of. */
export function kindsIn(form: ReadingForm, { measurand }: CheckCard): string[] {
  return [
    measurand === undefined ? 'an answer' : measurand.quantity.id,
    ...(form.field?.over ? ['a button for OL'] : []),
    ...(form.warmth ? ['how warm'] : []),
    ...(form.rpm ? ['how fast'] : []),
    ...(form.letStand ? ['one more take'] : []),
  ]
}

/**
 * As few of the cases as one finds by always taking the one that shows most of what none before it has
 * shown: a machine, or a kind of form on the way to a fault that is named.
 */
export function everyKindOfForm(cases: readonly Case[]): Case[] {
  const shown = new Set<string>()
  const chosen: Case[] = []
  const more = (kase: Case) =>
    [`on ${kase.machine.id}`, ...namedFault(kase).forms].filter((kind) => !shown.has(kind))
  for (;;) {
    const [best] = cases.toSorted((a, b) => more(b).length - more(a).length)
    if (best === undefined || more(best).length === 0) return chosen
    for (const kind of more(best)) shown.add(kind)
    chosen.push(best)
  }
}
