import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { type Generated, Kysely, SqliteDialect } from 'kysely'
import { expect, it, onTestFinished } from 'vitest'
import { forKysely } from '../../server/store/kysely-file.ts'
import { emptyFolder } from '../support/folder.ts'

interface Tables {
  notes: { id: Generated<number>; text: string }
}

/** A real file with one table, and room for little. */
function notes() {
  const file = new DatabaseSync(join(emptyFolder(), 'any.sqlite'))
  onTestFinished(() => file.close())
  file.exec('CREATE TABLE notes (id INTEGER PRIMARY KEY, text TEXT NOT NULL)')
  file.exec('PRAGMA max_page_count = 5')
  const dialect = new SqliteDialect({ database: forKysely(file) })
  return new Kysely<Tables>({ dialect })
}

it('gives rows back from what reads, and from what writes and returns', async () => {
  const database = notes()
  const { id } = await database
    .insertInto('notes')
    .values({ text: 'one' })
    .returning('id')
    .executeTakeFirstOrThrow()
  expect(id).toBe(1)
  expect(await database.selectFrom('notes').selectAll().execute()).toEqual([{ id: 1, text: 'one' }])
})

it('counts what is changed, as a bigint, the second time as well as the first', async () => {
  const database = notes()
  const write = (text: string) => database.insertInto('notes').values({ text }).executeTakeFirst()
  expect(await write('one')).toMatchObject({ insertId: 1n, numInsertedOrUpdatedRows: 1n })
  expect(await write('two')).toMatchObject({ insertId: 2n, numInsertedOrUpdatedRows: 1n })
  const changed = await database.updateTable('notes').set({ text: 'any' }).executeTakeFirst()
  expect(changed.numUpdatedRows).toBe(2n)
})

it('rolls a transaction back where its work fails, and goes on', async () => {
  const database = notes()
  const failing = database.transaction().execute(async (write) => {
    await write.insertInto('notes').values({ text: 'lost' }).execute()
    throw new Error('changed my mind')
  })
  await expect(failing).rejects.toThrow('changed my mind')
  expect(await database.selectFrom('notes').selectAll().execute()).toEqual([])
})

it('says that the disk is full, and not that there is nothing to roll back', async () => {
  const database = notes()
  const tooMuch = database.transaction().execute(async (write) => {
    await write
      .insertInto('notes')
      .values({ text: 'x'.repeat(100_000) })
      .execute()
  })
  await expect(tooMuch).rejects.toThrow('database or disk is full')
  await database.insertInto('notes').values({ text: 'small' }).execute()
})
