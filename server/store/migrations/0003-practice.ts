import type { Kysely, Migration } from 'kysely'
import { sql } from '../kysely.ts'

/** Rounds at the practice bench, as lists of events, and what came of those that are over. */
export const practice: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema
      .createTable('practice_rounds')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('who', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('opened_at', 'text', (column) => column.notNull())
      .addColumn('changed_at', 'text', (column) => column.notNull())
      .addColumn('result', 'text')
      .execute()
    await db.schema
      .createIndex('practice_rounds_who')
      .on('practice_rounds')
      .columns(['who', 'id'])
      .execute()
    await db.schema
      .createTable('practice_events')
      .addColumn('round', 'integer', (column) => column.notNull().references('practice_rounds.id'))
      .addColumn('seq', 'integer', (column) => column.notNull().check(sql`seq > 0`))
      .addColumn('at', 'text', (column) => column.notNull())
      .addColumn('kind', 'text', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('practice_events_key', ['round', 'seq'])
      .execute()
  },
}
