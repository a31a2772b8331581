import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { SqliteDatabase, SqliteStatement } from 'kysely'

/**
 * An open file as Kysely's SQLite dialect wants it. The driver has the interface of `node:sqlite`, so
 * that Node's own can take its place once the oldest Node that runs this has it.
 */
export function forKysely(file: DatabaseSyncInstance): SqliteDatabase {
  // Kysely writes the same few texts again and again; a statement made anew for each stays in memory
  // until it is collected.
  const prepared = new Map<string, SqliteStatement>()
  return {
    close: () => file.close(),
    prepare(sql) {
      // What broke a transaction off may have undone it, too, as a full disk does. To complain that there
      // is none to roll back would hide the cause.
      if (sql === 'rollback' && !file.isTransaction) return nothingToDo
      const statement = prepared.get(sql) ?? preparedStatement(file, sql)
      prepared.set(sql, statement)
      return statement
    },
  }
}

function preparedStatement(file: DatabaseSyncInstance, sql: string): SqliteStatement {
  const statement = file.prepare(sql)
  return {
    reader: statement.columns().length > 0,
    all: (parameters) => statement.all(...parameters),
    run: (parameters) => statement.run(...parameters),
    iterate: (parameters) => statement.iterate(...parameters),
  }
}

const nothingToDo: SqliteStatement = {
  reader: false,
  all: () => [],
  run: () => ({ changes: 0, lastInsertRowid: 0 }),
  iterate: () => [].values(),
}
