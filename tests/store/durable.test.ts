import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it, onTestFinished } from 'vitest'
import { makeDurable } from '../../server/store/durable.ts'
import { emptyFolder } from '../support/folder.ts'

const full = 2

it.each([
  ['journal_mode', 'wal'],
  ['synchronous', full],
  ['foreign_keys', 1],
  ['busy_timeout', 5000],
])('a database file is opened with %s = %s', (name, value) => {
  const file = new Database(join(emptyFolder(), 'any.sqlite'))
  onTestFinished(() => void file.close())
  makeDurable(file)
  expect(file.pragma(name, { simple: true })).toBe(value)
})

it('a database file that can only be read is refused when it is opened', () => {
  const path = join(emptyFolder(), 'any.sqlite')
  const before = new Database(path)
  makeDurable(before)
  before.close()
  const file = new Database(path, { readonly: true })
  onTestFinished(() => void file.close())
  expect(() => makeDurable(file)).toThrow(/readonly/)
})
