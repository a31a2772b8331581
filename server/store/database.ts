import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { Kysely, Migrator, SqliteDialect } from 'kysely'
import { makeDurable } from './durable.ts'
import { forKysely } from './kysely-file.ts'
import { migrationsInOrder } from './migrations/index.ts'
import type { Tables } from './tables.ts'

/** Opens `coilhound.sqlite` in the folder, both made if they are not there, and migrates it. */
export async function openDatabase(folder: string): Promise<Kysely<Tables>> {
  mkdirSync(folder, { recursive: true })
  const file = new DatabaseSync(join(folder, 'coilhound.sqlite'))
  const database = new Kysely<Tables>({ dialect: new SqliteDialect({ database: forKysely(file) }) })
  try {
    makeDurable(file)
    await migrate(database)
  } catch (problem) {
    file.close()
    throw problem
  }
  return database
}

async function migrate(database: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({ db: database, provider: migrationsInOrder })
  const { error } = await migrator.migrateToLatest()
  if (error !== undefined) throw error
}
