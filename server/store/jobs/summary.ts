import type { Expression, ExpressionBuilder, SqlBool } from 'kysely'
import { sql } from '../kysely.ts'
import type { Tables } from '../tables.ts'
import type { ConfirmedRecord } from './confirmed.ts'

/**
 * What is kept of a job for lists, so that none has to be replayed for its line. Written together with
 * the event that it comes from.
 */
export interface JobSummaryRecord {
  /** Plain data that survives JSON. The store does not look inside. */
  readonly shown: unknown
  /** Nothing is left to do on it. */
  readonly closed: boolean
  /** By what it is found: words in small letters, a space between. */
  readonly words: Readonly<Record<SearchedField, string>>
  /** What it has confirmed; null where it has not, or no longer, undefined where there was nothing to confirm. */
  readonly confirmed?: ConfirmedRecord | null | undefined
}

export const searchedFields = ['machine', 'complaint', 'part', 'note'] as const
export type SearchedField = (typeof searchedFields)[number]

/** Which jobs a list is about. What is left out does not matter. */
export interface WantedJobs {
  readonly closed?: boolean
  /** Each of them stands in one of the fields, or is the job's number; as `words` are written. */
  readonly words?: readonly string[]
  /** The only field to look in. */
  readonly field?: SearchedField
}

/** The columns of a summary. */
export function summaryRow({ shown, closed, words }: JobSummaryRecord) {
  return {
    summary: JSON.stringify(shown),
    closed: closed ? 1 : 0,
    machine_words: words.machine,
    complaint_words: words.complaint,
    part_words: words.part,
    note_words: words.note,
  }
}

/** What a row must fulfil to be among the wanted jobs. */
export function isWanted({ words = [], field, closed }: WantedJobs) {
  return (row: ExpressionBuilder<Tables, 'jobs'>): Expression<SqlBool> =>
    row.and([
      ...(closed === undefined ? [] : [row('closed', '=', closed ? 1 : 0)]),
      ...words.map((word) =>
        row.or([
          ...(field === undefined && /^\d{1,15}$/.test(word) ? [row('id', '=', Number(word))] : []),
          ...(field === undefined ? searchedFields : [field]).map((each) => holds(each, word)),
        ]),
      ),
    ])
}

/** Words hold letters and figures only, so that no sign in them means anything to `LIKE`. */
function holds(field: SearchedField, word: string): Expression<SqlBool> {
  return sql<SqlBool>`${sql.ref(`${field}_words`)} LIKE ${`%${word}%`}`
}
