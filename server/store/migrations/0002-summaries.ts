import type { Kysely, Migration } from 'kysely'

const searched = ['machine_words', 'complaint_words', 'part_words', 'note_words'] as const

/** What the list of jobs shows and searches, kept beside each job; empty for jobs from before. */
export const summaries: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.alterTable('jobs').addColumn('summary', 'text').execute()
    for (const column of searched) {
      await db.schema
        .alterTable('jobs')
        .addColumn(column, 'text', (built) => built.notNull().defaultTo(''))
        .execute()
    }
    await db.schema
      .alterTable('jobs')
      .addColumn('closed', 'integer', (column) => column.notNull().defaultTo(0))
      .execute()
    await db.schema
      .createIndex('jobs_closed_changed_at')
      .on('jobs')
      .columns(['closed', 'changed_at', 'id'])
      .execute()
  },
}
