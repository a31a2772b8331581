import type { Testability } from '../diagnosis/testability/testability.ts'
import type { CaseTestability } from '../knowledge/case-testability.ts'
import type { Figure } from './page.ts'
import { groupsOf, minutes, share } from './words.ts'

/** How well faults are found with one box of tools. */
export function foundWith(found: Testability): Figure[] {
  const [one, two, three] = found.isolated
  return [
    { label: 'Faults', value: String(found.faults) },
    { label: 'Detected', value: share(found.detected) },
    { label: 'To 1 part', value: share(one) },
    { label: 'To 2', value: share(two) },
    { label: 'To 3', value: share(three) },
    { label: 'Time', value: minutes(found.minutes) },
    { label: 'Groups', value: String(groupsOf(found).length) },
  ]
}

/** A row of the page of all cases: with a full tool box. */
export function figuresOf({ full, neverPay, checks }: CaseTestability): Figure[] {
  return [...foundWith(full), { label: 'Never pay', value: `${neverPay.length} of ${checks}` }]
}

/** The labels of such a row. */
export const columns: readonly string[] = [
  'Faults',
  'Detected',
  'To 1 part',
  'To 2',
  'To 3',
  'Time',
  'Groups',
  'Never pay',
]
