import type { Opened } from '../record/events.ts'

export const roundHref = (id: number): string => `/practice/rounds/${id}`
export const checkHref = (id: number, check: string): string =>
  `${roundHref(id)}?check=${encodeURIComponent(check)}`
export const afterHref = (id: number): string => `${roundHref(id)}/after`
export const progressHref = (who: string): string =>
  `/practice/progress?${new URLSearchParams({ who })}`

/** The page that teaches the order of the checks of a case. */
export const learnHref = (complaint: string, machine: string): string =>
  `/learn/${encodeURIComponent(complaint)}?${new URLSearchParams({ machine })}`

/** The form of a new round, filled in so that it begins with the same machine. */
export const handOutHref = ({ machine, complaint, level, seed }: Opened): string =>
  `/practice?${new URLSearchParams({ machine, complaint, level, seed })}`
