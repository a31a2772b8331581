import type { Case } from '../../knowledge/case.ts'
import { textOf } from '../../web/fields.ts'

/** The check that somebody was at when they went for the meter: to be made, made once more, or put right. */
export interface Beside {
  readonly name: (typeof names)[number]
  readonly check: string
}

const names = ['check', 'take', 'correct'] as const

/** What an address or a form says of it; nothing where it names none of this job. */
export function besideIn(sent: unknown, { checks }: Pick<Case, 'checks'>): Beside | undefined {
  const name = names.find((each) => checks.has(textOf(sent, each)))
  return name && { name, check: textOf(sent, name) }
}

/** The page of the job with that check. */
export const jobBeside = ({ id }: { readonly id: number }, beside: Beside | undefined): string =>
  beside === undefined
    ? `/jobs/${id}`
    : `/jobs/${id}?${beside.name}=${encodeURIComponent(beside.check)}`
