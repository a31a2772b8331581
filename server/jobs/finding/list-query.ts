import type { SearchedField } from '../../store/jobs/summary.ts'
import { searchedFields, type WantedJobs } from '../../store/jobs/summary.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { plainWords } from '../../web/typed/spelling.ts'

/** What somebody asks the list of jobs for. */
export interface AskedOfList {
  readonly find: string
  readonly field: SearchedField | ''
  readonly state: 'open' | 'closed' | ''
  /** From 1. */
  readonly page: number
  /** What to say of a search that cannot be made. */
  readonly problem?: string
}

export const jobsOnPage = 25

/** More words than anybody remembers of a job. */
const mostWords = 8

/** Reads the address of a list. What it cannot mean is left out, as an old link may hold it. */
export function listQuery(query: unknown): AskedOfList {
  const find = textOf(query, 'find').trim()
  const [field, state] = [textOf(query, 'in'), textOf(query, 'state')]
  const problem = problemWith(find)
  return {
    find,
    field: searchedFields.find((each) => each === field) ?? '',
    state: state === 'open' || state === 'closed' ? state : '',
    page: Math.max(1, wholeOf(textOf(query, 'page')) ?? 1),
    ...(problem !== undefined && { problem }),
  }
}

function problemWith(find: string): string | undefined {
  if (find.length > 100) return 'Keep the search under 100 characters.'
  const words = plainWords(find)
  if (words.length > mostWords) return `Search for at most ${mostWords} words at a time.`
  if (find !== '' && words.length === 0) return 'Write a word or a number to find jobs by.'
  return undefined
}

/** The jobs meant, whatever their state. */
export function wantedOf({ find, field }: AskedOfList): WantedJobs {
  return { words: plainWords(find), ...(field !== '' && { field }) }
}

/** The address of that list. */
export function addressOf({ find, field, state, page }: AskedOfList): string {
  const said = Object.entries({ find, in: field, state, page: page === 1 ? '' : String(page) })
  const query = new URLSearchParams(said.filter(([, value]) => value !== ''))
  return query.size === 0 ? '/jobs' : `/jobs?${query}`
}
