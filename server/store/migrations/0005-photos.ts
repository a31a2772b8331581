import type { Kysely, Migration } from 'kysely'

/** Pictures of a job's parts and connectors, whole, in the one file that is a whole copy. */
export const photos: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema
      .createTable('photos')
      // Never given again, so that an address never shows another picture than it did.
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('job', 'integer', (column) => column.notNull().references('jobs.id'))
      .addColumn('of_check', 'text')
      .addColumn('type', 'text', (column) => column.notNull())
      .addColumn('width', 'integer', (column) => column.notNull())
      .addColumn('height', 'integer', (column) => column.notNull())
      .addColumn('added_at', 'text', (column) => column.notNull())
      .addColumn('bytes', 'blob', (column) => column.notNull())
      .execute()
    await db.schema.createIndex('photos_job').on('photos').columns(['job', 'id']).execute()
  },
}
