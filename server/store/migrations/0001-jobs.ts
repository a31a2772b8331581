import type { Kysely, Migration } from 'kysely'
import { sql } from '../kysely.ts'

export const jobs: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema
      .createTable('jobs')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('machine', 'text', (column) => column.notNull())
      .addColumn('complaint', 'text', (column) => column.notNull())
      .addColumn('note', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('opened_at', 'text', (column) => column.notNull())
      .addColumn('changed_at', 'text', (column) => column.notNull())
      .execute()
    await db.schema
      .createIndex('jobs_changed_at')
      .on('jobs')
      .columns(['changed_at', 'id'])
      .execute()
    await db.schema
      .createTable('job_events')
      .addColumn('job', 'integer', (column) => column.notNull().references('jobs.id'))
      .addColumn('seq', 'integer', (column) => column.notNull().check(sql`seq > 0`))
      .addColumn('at', 'text', (column) => column.notNull())
      .addColumn('kind', 'text', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('job_events_key', ['job', 'seq'])
      .execute()
  },
}
