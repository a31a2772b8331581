import type { Migration, MigrationProvider } from 'kysely'
import { jobs } from './0001-jobs.ts'
import { summaries } from './0002-summaries.ts'
import { practice } from './0003-practice.ts'
import { confirmed } from './0004-confirmed.ts'
import { photos } from './0005-photos.ts'

/** Every migration there ever was, in order. One that has been released is never changed again. */
const migrations: Readonly<Record<string, Migration>> = {
  '0001-jobs': jobs,
  '0002-summaries': summaries,
  '0003-practice': practice,
  '0004-confirmed': confirmed,
  '0005-photos': photos,
}

/** Given as a list rather than read from a folder, so that source and build find the same ones. */
export const migrationsInOrder: MigrationProvider = {
  getMigrations: async () => migrations,
}
