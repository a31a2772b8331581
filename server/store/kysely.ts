import { createRequire } from 'node:module'

/**
 * What is used of Kysely, from its CommonJS form: as modules it is 263 files, each found and linked by
 * itself, and that took a start 0.1 s of CPU more.
 */
export const { Kysely, Migrator, SqliteDialect, sql }: typeof import('kysely') = createRequire(
  import.meta.url,
)('kysely')
