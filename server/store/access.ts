import type { Kysely, Transaction } from 'kysely'
import { sql } from './kysely.ts'
import { patiently } from './patience.ts'
import type { Tables } from './tables.ts'
import { trouble } from './trouble.ts'

/**
 * The one way to what is kept. Waits while another program holds the file, and rejects with StoreTrouble
 * for whatever a person can mend.
 */
export interface Access {
  read<T>(work: (database: Kysely<Tables>) => Promise<T>): Promise<T>
  /** In one transaction. May be tried several times, so it must do nothing but write. */
  write<T>(work: (write: Transaction<Tables>) => Promise<T>): Promise<T>
  close(): Promise<void>
}

/** `whatBecame` of the open file says so once it is no longer the one that the next start will find. */
export function accessTo(database: Kysely<Tables>, whatBecame: () => string | undefined): Access {
  const stillThere = async () => {
    const became = whatBecame()
    if (became === undefined) return
    const cause = await emptyLog(database)
    throw trouble('gone', new Error(became, { cause }))
  }
  return {
    read: (work) => patiently(() => work(database)),
    write: (work) =>
      patiently(async () => {
        await stillThere()
        const done = await database.transaction().execute(work)
        // It may have gone while this was written, and then nothing may be acknowledged.
        await stillThere()
        return done
      }),
    async close() {
      // The driver cannot let go of its statements, and with them SQLite would leave this undone.
      await emptyLog(database)
      await database.destroy()
    },
  }
}

/**
 * Brings what was written last from the log beside the database into the database itself, wherever that
 * is now: one file is a whole copy then. SQLite adds a log that it finds to whatever database stands
 * beside it, and would spoil a copy that was put in its place. Resolves to what went wrong.
 */
async function emptyLog(database: Kysely<Tables>): Promise<unknown> {
  try {
    await sql`PRAGMA wal_checkpoint(TRUNCATE)`.execute(database)
  } catch (problem) {
    return problem
  }
}
