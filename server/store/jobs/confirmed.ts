import type { Kysely, Selectable, Transaction } from 'kysely'
import type { Access } from '../access.ts'
import type { Tables } from '../tables.ts'

/** What a job confirmed. The store does not look inside. */
export interface ConfirmedRecord {
  /** When it was proved. */
  readonly at: Date
  /** Plain data that survives JSON. */
  readonly body: unknown
}

export interface KeptConfirmed extends ConfirmedRecord {
  readonly job: number
}

/** Keeps what a job has confirmed; null where that was taken back. */
export async function keepConfirmed(
  write: Transaction<Tables>,
  job: number,
  confirmed: ConfirmedRecord | null,
): Promise<void> {
  const row = {
    change: (await lastChange(write)) + 1,
    at: confirmed?.at.toISOString() ?? '',
    body: confirmed && JSON.stringify(confirmed.body),
  }
  await write
    .insertInto('confirmed_repairs')
    .values({ job, ...row })
    .onConflict((same) => same.column('job').doUpdateSet(row))
    .execute()
}

/** What all jobs have confirmed, the earliest first. */
export async function allConfirmed(access: Access): Promise<KeptConfirmed[]> {
  const rows = await access.read((database) =>
    database
      .selectFrom('confirmed_repairs')
      .selectAll()
      .where('body', 'is not', null)
      .orderBy('at')
      .orderBy('job')
      .execute(),
  )
  return rows.flatMap(confirmedIn)
}

/**
 * A greater number whenever anything there has changed, as no row is ever taken away; 0 where nothing is. One step into an
 * index, so that it can be asked on every request.
 */
export function confirmedStamp(access: Access): Promise<number> {
  return access.read(lastChange)
}

async function lastChange(database: Kysely<Tables>): Promise<number> {
  const row = await database
    .selectFrom('confirmed_repairs')
    .select(({ fn }) => fn.max('change').as('last'))
    .executeTakeFirst()
  return row?.last ?? 0
}

/** A row that cannot be read counts for nothing until its job is written anew. */
function confirmedIn({ job, at, body }: Selectable<Tables['confirmed_repairs']>): KeptConfirmed[] {
  try {
    return body === null ? [] : [{ job, at: new Date(at), body: JSON.parse(body) }]
  } catch {
    return []
  }
}
