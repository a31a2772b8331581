import type { Kysely, Migration } from 'kysely'

/** What was confirmed to be wrong, a row for each job; jobs that are done by now are gone through once more for theirs. */
export const confirmed: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema
      .createTable('confirmed_repairs')
      .addColumn('job', 'integer', (column) => column.primaryKey().references('jobs.id'))
      .addColumn('change', 'integer', (column) => column.notNull())
      .addColumn('at', 'text', (column) => column.notNull())
      .addColumn('body', 'text')
      .execute()
    await db.schema
      .createIndex('confirmed_repairs_change')
      .on('confirmed_repairs')
      .column('change')
      .execute()
    await (db as Kysely<Columns>)
      .updateTable('jobs')
      .set({ summary: null })
      .where('closed', '=', 1)
      .execute()
  },
}

/** The columns that are used here, as they were then. */
interface Columns {
  readonly jobs: { readonly summary: string | null; readonly closed: number }
}
