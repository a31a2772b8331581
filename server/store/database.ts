import { mkdirSync } from 'node:fs'
import type { Kysely as Database } from 'kysely'
import { loadDriver } from './driver.ts'
import { makeDurable } from './durable.ts'
import { Kysely, Migrator, SqliteDialect } from './kysely.ts'
import { forKysely } from './kysely-file.ts'
import { migrationsInOrder } from './migrations/index.ts'
import type { Tables } from './tables.ts'
import { trouble } from './trouble.ts'

export interface OpenDatabase {
  readonly database: Database<Tables>
  /** There was nothing in the file, or no file: every table was made just now. */
  readonly isNew: boolean
}

/** Opens the file, made with its folder if it is not there, and migrates it. */
export async function openDatabase(folder: string, path: string): Promise<OpenDatabase> {
  mkdirSync(folder, { recursive: true })
  const { DatabaseSync } = await loadDriver()
  const file = new DatabaseSync(path)
  try {
    makeDurable(file)
    const database = new Kysely<Tables>({
      dialect: new SqliteDialect({ database: forKysely(file) }),
    })
    return { database, isNew: await migrate(database) }
  } catch (problem) {
    file.close()
    throw problem
  }
}

/** Says whether all migrations were still to be made. */
async function migrate(database: Database<Tables>): Promise<boolean> {
  const migrator = new Migrator({ db: database, provider: migrationsInOrder })
  const { error, results = [] } = await migrator.migrateToLatest()
  if (error !== undefined) throw isLaterVersion(error) ? trouble('later version', error) : error
  const all = await migrator.getMigrations()
  return results.length === all.length
}

/** The file knows of a migration that this version does not. Kysely has no code for it, only words. */
function isLaterVersion(error: unknown): boolean {
  return String(error).includes('corrupted migrations: previously executed migration')
}
