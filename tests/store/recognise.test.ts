import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync, type DatabaseSyncInstance } from '@photostructure/sqlite'
import { afterAll, describe, expect, it } from 'vitest'
import { recognised } from '../../server/store/recognise.ts'
import { StoreTrouble } from '../../server/store/trouble.ts'
import { spoil } from '../support/spoil.ts'

const folder = mkdtempSync(join(tmpdir(), 'coilhound-'))
afterAll(() => rmSync(folder, { recursive: true }))

let files = 0
const path = () => join(folder, `${++files}.sqlite`)

/** An open file with a table `t` in it. */
function table(at = path()): DatabaseSyncInstance {
  const file = new DatabaseSync(at)
  file.exec('CREATE TABLE t (a)')
  return file
}

const large = 'x'.repeat(100_000)

/** Each makes the driver complain in earnest: of a query without rows, and of one with rows. */
const complaints: Readonly<Record<string, readonly [string, () => unknown]>> = {
  'no room for a row': ['full', () => small().prepare('INSERT INTO t VALUES (?)').run(large)],
  'no room for a row that is asked back': [
    'full',
    () => small().prepare('INSERT INTO t VALUES (?) RETURNING a').all(large),
  ],
  'a lock when it writes': ['in use', () => locked().exec('INSERT INTO t VALUES (1)')],
  'a lock when it asks back what it wrote': [
    'in use',
    () => locked().prepare('INSERT INTO t VALUES (1) RETURNING a').all(),
  ],
  'a lock when it reads': ['in use', () => locked('EXCLUSIVE').prepare('SELECT * FROM t').all()],
  'a file that is no database': [
    'damaged',
    () => {
      const at = path()
      writeFileSync(at, 'these are the notes of last week\n'.repeat(99))
      new DatabaseSync(at).exec('SELECT * FROM t')
    },
  ],
  'pages that are none': ['damaged', () => spoilt().prepare('SELECT * FROM t').all()],
  'a file that was cut off': ['damaged', () => cutOff().exec('SELECT sum(length(a)) FROM t')],
  'a folder in its place': [
    'not writable',
    () => {
      const at = path()
      mkdirSync(at)
      new DatabaseSync(at)
    },
  ],
  'a file that may only be read': [
    'not writable',
    () => {
      const at = path()
      table(at).close()
      new DatabaseSync(at, { readOnly: true }).exec('INSERT INTO t VALUES (1)')
    },
  ],
}

function small(): DatabaseSyncInstance {
  const file = table()
  file.exec('PRAGMA max_page_count = 4')
  return file
}

function locked(how = 'IMMEDIATE'): DatabaseSyncInstance {
  const at = path()
  table(at).exec(`BEGIN ${how}`)
  return new DatabaseSync(at)
}

function filled(at: string): void {
  const file = table(at)
  for (let row = 0; row < 20; row++) file.prepare('INSERT INTO t VALUES (?)').run(large)
}

function spoilt(): DatabaseSyncInstance {
  const at = path()
  filled(at)
  spoil(at)
  return new DatabaseSync(at)
}

function cutOff(): DatabaseSyncInstance {
  const at = path()
  filled(at)
  truncateSync(at, 500_000)
  return new DatabaseSync(at)
}

describe('what the driver complains of', () => {
  it.each(Object.entries(complaints))('is recognised: %s', (_, [kind, complain]) => {
    const problem = thrownBy(complain)
    expect(problem).not.toBeInstanceOf(StoreTrouble)
    expect(recognised(problem)).toMatchObject({ kind, cause: problem })
  })

  it.each([
    ['a table that is not there', () => table().exec('SELECT * FROM nowhere')],
    ['a text that is no query', () => table().exec('nonsense')],
    ['a value that no column takes', () => table().prepare('SELECT ?').all(undefined)],
  ])('is left as it is where only we can mend it: %s', (_, complain) => {
    const problem = thrownBy(complain)
    expect(problem).toBeInstanceOf(Error)
    expect(recognised(problem)).toBe(problem)
  })
})

function thrownBy(complain: () => unknown): unknown {
  try {
    complain()
  } catch (problem) {
    return problem
  }
  return undefined
}
