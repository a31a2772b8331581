import type { Knowledge, Locate, Problem } from '../knowledge.ts'

/** Gathers problems; each is told where in which entry it stands. */
export interface Report {
  readonly problems: Problem[]
  /** For a sentence that names another place as well. */
  readonly locate: Locate
  add(entry: object, path: readonly PropertyKey[], says: string): void
}

export function newReport(locate: Locate): Report {
  const problems: Problem[] = []
  return {
    problems,
    locate,
    add: (entry, path, says) => {
      problems.push({ ...locate(entry, path), says })
    },
  }
}

/** "did you mean …?" for a mistyped name, or the list of what there is. */
export function known(names: Iterable<string>): string {
  const list = [...names]
  return list.length === 0 ? 'there is none yet' : `there is ${list.join(', ')}`
}

/** One thing the lint insists on. */
export type Rule = (knowledge: Knowledge, report: Report) => void
