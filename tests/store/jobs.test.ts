import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { describe, expect, it, onTestFinished } from 'vitest'
import type { JobSummaryRecord, WantedJobs } from '../../server/store/jobs/summary.ts'
import type { EventRecord } from '../../server/store/jobs.ts'
import { Kysely, Migrator, SqliteDialect } from '../../server/store/kysely.ts'
import { forKysely } from '../../server/store/kysely-file.ts'
import { jobs as firstMigration } from '../../server/store/migrations/0001-jobs.ts'
import { openStore, type Store } from '../../server/store/open.ts'
import type { Tables } from '../../server/store/tables.ts'
import { emptyFolder } from '../support/folder.ts'

const head = { machine: 'pump', complaint: 'no-spark', note: 'the red one' }

function event(kind: string, minute: number, body: object = {}): EventRecord {
  return { kind, body, at: new Date(Date.UTC(2031, 4, 7, 14, minute)) }
}

async function opened(folder = emptyFolder()): Promise<Store> {
  const store = await openStore(folder)
  onTestFinished(() => store.close())
  return store
}

describe('jobs in the store', () => {
  it('come back with their events as they were written', async () => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0, { air: -5.5, tools: ['plug-wrench'] }))
    await jobs.append(id, 1, event('reading', 1, { typed: '52,5 Ω “warm”', value: 52.5 }))
    expect(await jobs.events(id)).toEqual([
      event('opened', 0, { air: -5.5, tools: ['plug-wrench'] }),
      event('reading', 1, { typed: '52,5 Ω “warm”', value: 52.5 }),
    ])
  })

  it('are numbered each on its own', async () => {
    const { jobs } = await opened()
    const first = await jobs.open(head, event('opened', 0))
    const second = await jobs.open(head, event('opened', 1))
    expect(second).not.toBe(first)
    await jobs.append(second, 1, event('reading', 2))
    expect(await jobs.events(first)).toHaveLength(1)
    expect(await jobs.events(second)).toHaveLength(2)
  })

  it('have no events where there is no such job', async () => {
    const { jobs } = await opened()
    expect(await jobs.events(1)).toEqual([])
  })

  it('take one of two events made on the same version, and call the other stale', async () => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0))
    const both = await Promise.all([
      jobs.append(id, 1, event('reading', 1, { by: 'first' })),
      jobs.append(id, 1, event('reading', 1, { by: 'second' })),
    ])
    expect(both.sort()).toEqual(['stale', 'written'])
    expect(await jobs.events(id)).toHaveLength(2)
  })

  it('take several events together, or none of them where one came first', async () => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0), undefined, [event('meter', 0)])
    const three = ['a', 'b', 'c'].map((name) => event('reading', 1, { name }))
    const [first, ...more] = three
    const results = await Promise.all([
      jobs.append(id, 2, first!, undefined, more),
      jobs.append(id, 3, event('reading', 1, { name: 'between' })),
      jobs.append(id, 2, first!, undefined, more),
    ])
    expect(results).toEqual(['written', 'stale', 'stale'])
    expect(await jobs.events(id)).toEqual([event('opened', 0), event('meter', 0), ...three])
    expect((await jobs.list(1))[0]).toMatchObject({ version: 5 })
  })

  it.each([0, 2, 99])('take nothing made on version %i of a job at version 1', async (version) => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0))
    expect(await jobs.append(id, version, event('reading', 1))).toBe('stale')
    expect(await jobs.events(id)).toHaveLength(1)
    expect((await jobs.list(1))[0]).toMatchObject({ version: 1, changedAt: event('', 0).at })
  })

  it('take nothing for a job that is not there', async () => {
    const { jobs } = await opened()
    expect(await jobs.append(7, 1, event('reading', 1))).toBe('stale')
    expect(await jobs.events(7)).toEqual([])
  })

  it('are listed with the newest change first, and no more than asked for', async () => {
    const { jobs } = await opened()
    const a = await jobs.open({ ...head, note: 'a' }, event('opened', 0))
    const b = await jobs.open({ ...head, note: 'b' }, event('opened', 1))
    const c = await jobs.open({ ...head, note: 'c' }, event('opened', 2))
    await jobs.append(a, 1, event('reading', 3))
    const openedAt = event('', 0).at
    expect((await jobs.list(9)).map(({ id }) => id)).toEqual([a, c, b])
    expect(await jobs.list(1)).toEqual([
      { ...head, note: 'a', id: a, version: 2, openedAt, changedAt: event('', 3).at, shown: null },
    ])
  })
})

describe('what lists show of jobs', () => {
  const summary = (machine: string, closed = false, part = '', note = ''): JobSummaryRecord => ({
    shown: { of: machine },
    closed,
    words: { machine, complaint: 'no spark', part, note },
  })
  const ids = (jobs: readonly { id: number }[]) => jobs.map(({ id }) => id)

  async function three(): Promise<Store['jobs']> {
    const { jobs } = await opened()
    await jobs.open(head, event('opened', 0), summary('pump one', true, 'exciter', 'from the hut'))
    await jobs.open(head, event('opened', 1), summary('carrier', false, 'coil'))
    await jobs.open(head, event('opened', 2), summary('pump two'))
    return jobs
  }

  it('is written with the event it comes from, or not at all', async () => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0), summary('pump'))
    expect(await jobs.append(id, 9, event('reading', 1), summary('late', true))).toBe('stale')
    expect(await jobs.list(1)).toMatchObject([{ shown: { of: 'pump' } }])
    expect(await jobs.append(id, 1, event('reading', 1), summary('carrier', true))).toBe('written')
    expect(await jobs.list(1)).toMatchObject([{ shown: { of: 'carrier' }, version: 2 }])
    expect(await jobs.count()).toEqual({ open: 0, closed: 1 })
  })

  it('is searched in every field or in one, all words at once', async () => {
    const jobs = await three()
    const found = async (wanted: WantedJobs) => ids(await jobs.list(9, wanted))
    expect(await found({})).toEqual([3, 2, 1])
    expect(await found({ words: ['pump'] })).toEqual([3, 1])
    expect(await found({ words: ['pump', 'hut'] })).toEqual([1])
    expect(await found({ words: ['exci'], field: 'part' })).toEqual([1])
    expect(await found({ words: ['exci'], field: 'machine' })).toEqual([])
    expect(await found({ words: ['2'] })).toEqual([2])
    expect(await found({ closed: false })).toEqual([3, 2])
    expect(await found({ closed: true, words: ['carrier'] })).toEqual([])
    expect(await jobs.count({ words: ['pump'] })).toEqual({ open: 1, closed: 1 })
  })

  it('comes in pages', async () => {
    const jobs = await three()
    expect(ids(await jobs.list(2, {}, 0))).toEqual([3, 2])
    expect(ids(await jobs.list(2, {}, 2))).toEqual([1])
  })

  it('is asked for where it is missing, and kept only for the version it is of', async () => {
    const { jobs } = await opened()
    const id = await jobs.open(head, event('opened', 0))
    expect(await jobs.withoutSummary(0, 9)).toEqual([id])
    expect(await jobs.withoutSummary(id, 9)).toEqual([])
    await jobs.summarise(id, 2, summary('late'))
    expect(await jobs.withoutSummary(0, 9)).toEqual([id])
    await jobs.summarise(id, 1, summary('pump'))
    expect(await jobs.withoutSummary(0, 9)).toEqual([])
  })

  it('knows the job that was opened last', async () => {
    const { jobs } = await opened()
    expect(await jobs.last()).toBe(null)
    const first = await jobs.open(head, event('opened', 0))
    const second = await jobs.open(head, event('opened', 1))
    await jobs.append(first, 1, event('reading', 2))
    expect(await jobs.last()).toBe(second)
  })

  it('is added to a file from before', async () => {
    const folder = emptyFolder()
    const file = new DatabaseSync(join(folder, 'coilhound.sqlite'))
    const before = new Kysely<Tables>({ dialect: new SqliteDialect({ database: forKysely(file) }) })
    const first = { getMigrations: async () => ({ '0001-jobs': firstMigration }) }
    expect((await new Migrator({ db: before, provider: first }).migrateToLatest()).error).toBe(
      undefined,
    )
    const at = event('', 0).at.toISOString()
    const row = { ...head, version: 1, opened_at: at, changed_at: at }
    await before
      .insertInto('jobs')
      .values({ ...row, id: 4 } as never)
      .execute()
    await before.destroy()
    const { jobs } = await opened(folder)
    expect(await jobs.list(9)).toMatchObject([{ id: 4, note: head.note, shown: null }])
    expect(await jobs.count()).toEqual({ open: 1, closed: 0 })
    expect(await jobs.withoutSummary(0, 9)).toEqual([4])
  })
})

describe('a store', () => {
  it('keeps what was written for the next time it is opened', async () => {
    const folder = emptyFolder()
    const before = await openStore(folder)
    const id = await before.jobs.open(head, event('opened', 0))
    await before.close()
    const after = await opened(folder)
    expect(await after.jobs.events(id)).toEqual([event('opened', 0)])
  })

  it('may be open twice, and the second sees what the first wrote', async () => {
    const folder = emptyFolder()
    const [one, two] = [await opened(folder), await opened(folder)]
    const id = await one.jobs.open(head, event('opened', 0))
    expect(await two.jobs.append(id, 1, event('reading', 1))).toBe('written')
    expect(await one.jobs.append(id, 1, event('reading', 1))).toBe('stale')
  })

  it('makes its folder, and the folders above it', async () => {
    const folder = join(emptyFolder(), 'shop', 'data')
    await opened(folder)
    expect(existsSync(join(folder, 'coilhound.sqlite'))).toBe(true)
  })

  it('does not open a file that is no database', async () => {
    const folder = emptyFolder()
    writeFileSync(join(folder, 'coilhound.sqlite'), 'these are the notes of last week\n'.repeat(99))
    await expect(openStore(folder)).rejects.toMatchObject({ kind: 'damaged' })
  })
})

describe('what jobs have confirmed', () => {
  const summary = {
    shown: {},
    closed: true,
    words: { machine: '', complaint: '', part: '', note: '' },
  }
  const confirmed = (minute: number) => ({ at: event('', minute).at, body: { minute } })

  it('is kept with the event that it comes from, the earliest first, and stands until it is taken back', async () => {
    const { jobs } = await opened()
    const [one, two] = [
      await jobs.open(head, event('opened', 0)),
      await jobs.open(head, event('opened', 1)),
    ]
    await jobs.append(one, 1, event('proved', 9), { ...summary, confirmed: confirmed(9) })
    await jobs.append(two, 1, event('proved', 5), { ...summary, confirmed: confirmed(5) })
    expect((await jobs.confirmed()).map(({ job }) => job)).toEqual([two, one])
    await jobs.append(one, 2, event('noted', 10), summary)
    expect(await jobs.confirmed()).toHaveLength(2)
    await jobs.append(one, 3, event('repaired', 11), { ...summary, confirmed: null })
    expect(await jobs.confirmed()).toEqual([{ job: two, ...confirmed(5) }])
  })

  it('has another stamp after each change, and none where it came too late', async () => {
    const { jobs } = await opened()
    const stamps = [await jobs.confirmedStamp()]
    const id = await jobs.open(head, event('opened', 0))
    for (const [version, minute] of [
      [1, 5],
      [2, 6],
    ] as const) {
      await jobs.append(id, version, event('proved', minute), {
        ...summary,
        confirmed: confirmed(minute),
      })
      stamps.push(await jobs.confirmedStamp())
    }
    await jobs.append(id, 3, event('repaired', 7), { ...summary, confirmed: null })
    stamps.push(await jobs.confirmedStamp())
    expect(new Set(stamps).size).toBe(4)
    expect(
      await jobs.append(id, 3, event('proved', 8), { ...summary, confirmed: confirmed(8) }),
    ).toBe('stale')
    expect(await jobs.confirmedStamp()).toBe(stamps.at(-1))
    expect(await jobs.confirmed()).toEqual([])
  })
})
