import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { expect, it, onTestFinished } from 'vitest'
import { makeDurable } from '../../server/store/durable.ts'
import { emptyFolder } from '../support/folder.ts'

const full = 2

it.each([
  ['journal_mode', 'wal'],
  ['synchronous', full],
  ['foreign_keys', 1],
  ['busy_timeout', 0],
])('a database file is opened with %s = %s', (name, value) => {
  const file = new DatabaseSync(join(emptyFolder(), 'any.sqlite'))
  onTestFinished(() => file.close())
  makeDurable(file)
  expect(Object.values(file.prepare(`PRAGMA ${name}`).get())).toEqual([value])
})

it('a database file that can only be read is refused when it is opened', () => {
  const path = join(emptyFolder(), 'any.sqlite')
  const before = new DatabaseSync(path)
  makeDurable(before)
  before.close()
  const file = new DatabaseSync(path, { readOnly: true })
  onTestFinished(() => file.close())
  expect(() => makeDurable(file)).toThrow(/readonly/)
})
