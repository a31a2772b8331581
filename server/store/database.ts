import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { Kysely, Migrator, SqliteDialect } from 'kysely'
import { makeDurable } from './durable.ts'
import { migrationsInOrder } from './migrations/index.ts'
import type { Tables } from './tables.ts'

/** Opens `coilhound.sqlite` in the folder, both made if they are not there, and migrates it. */
export async function openDatabase(folder: string): Promise<Kysely<Tables>> {
  mkdirSync(folder, { recursive: true })
  const file = new Database(join(folder, 'coilhound.sqlite'))
  const database = new Kysely<Tables>({ dialect: new SqliteDialect({ database: file }) })
  try {
    makeDurable(file)
    await migrate(database)
  } catch (problem) {
    await database.destroy()
    throw problem
  }
  return database
}

async function migrate(database: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({ db: database, provider: migrationsInOrder })
  const { error } = await migrator.migrateToLatest()
  if (error !== undefined) throw error
}
