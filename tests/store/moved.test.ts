import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { accessTo } from '../../server/store/access.ts'
import { openDatabase } from '../../server/store/database.ts'
import type { EventRecord } from '../../server/store/jobs.ts'
import { openStore, type Store } from '../../server/store/open.ts'
import { sameFiles } from '../../server/store/same-files.ts'
import { emptyFolder } from '../support/folder.ts'

const head = { machine: 'pump', complaint: 'no-spark', note: '' }
const row = { ...head, version: 1, opened_at: '', changed_at: '' }
const gone = { kind: 'gone', message: expect.stringContaining('deleted, moved or replaced') }

function event(n: number): EventRecord {
  return { kind: 'reading', body: { n, why: 'x'.repeat(2000) }, at: new Date(2031, 4, 7) }
}

/** A store with one job of that many events, and the path of its file. */
async function filledStore({ events = 1, folder = emptyFolder() } = {}) {
  const store = await openStore(folder)
  onTestFinished(() => store.close())
  const job = await store.jobs.open(head, event(1))
  await append(store, job, 1, events)
  return { store, job, folder, path: join(folder, 'coilhound.sqlite') }
}

async function append({ jobs }: Store, job: number, from: number, to: number): Promise<void> {
  for (let version = from; version < to; version++) {
    expect(await jobs.append(job, version, event(version + 1))).toBe('written')
  }
}

describe('a store whose file is taken away takes nothing more', () => {
  it.each(['', '-wal', '-shm'])('where coilhound.sqlite%s is deleted', async (end) => {
    const { store, job, path } = await filledStore()
    rmSync(path + end)
    await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject(gone)
    await expect(store.jobs.open(head, event(1))).rejects.toMatchObject(gone)
  })

  it.each(['', '-wal', '-shm'])(
    'where another stands in its place: coilhound.sqlite%s',
    async (end) => {
      const { store, job, path } = await filledStore()
      copyFileSync(path + end, `${path}.copy`)
      renameSync(`${path}.copy`, path + end)
      await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject(gone)
    },
  )

  it('where its folder is gone, and where an empty one stands in its place', async () => {
    const { store, job, folder } = await filledStore()
    rmSync(folder, { recursive: true })
    await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject(gone)
    mkdirSync(folder)
    await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject(gone)
  })

  it('where it is taken away while that is written', async () => {
    const folder = emptyFolder()
    const path = join(folder, 'coilhound.sqlite')
    const { database } = await openDatabase(folder, path)
    const access = accessTo(database, sameFiles(path))
    onTestFinished(() => access.close())
    const writing = access.write(async (write) => {
      await write.insertInto('jobs').values(row).execute()
      rmSync(path)
    })
    await expect(writing).rejects.toMatchObject(gone)
  })

  it('but what was written can still be read, to be copied from the page', async () => {
    const { store, job, path } = await filledStore({ events: 3 })
    rmSync(path)
    expect(await store.jobs.events(job)).toHaveLength(3)
    expect(await store.jobs.list(5)).toHaveLength(1)
  })

  it('and says in its cause which file it is', async () => {
    const { store, job, path } = await filledStore()
    rmSync(path)
    const cause = expect.objectContaining({ message: `${path} is gone` })
    await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject({ cause })
  })
})

describe('a store whose file was taken away', () => {
  it('goes on once it is put back', async () => {
    const { store, job, folder } = await filledStore()
    renameSync(folder, `${folder}-moved`)
    await expect(store.jobs.append(job, 1, event(2))).rejects.toMatchObject(gone)
    renameSync(`${folder}-moved`, folder)
    expect(await store.jobs.append(job, 1, event(2))).toBe('written')
  })

  it('leaves it whole where it is now', async () => {
    const { store, job, path } = await filledStore({ events: 9 })
    const elsewhere = emptyFolder()
    renameSync(path, join(elsewhere, 'coilhound.sqlite'))
    await expect(store.jobs.append(job, 9, event(10))).rejects.toMatchObject(gone)
    const moved = await openStore(elsewhere)
    onTestFinished(() => moved.close())
    expect(await moved.jobs.events(job)).toHaveLength(9)
  })

  it.each([
    [
      'noticed it',
      (store: Store, job: number) => store.jobs.append(job, 40, event(41)).catch(() => {}),
    ],
    ['was closed', (store: Store) => store.close()],
  ])(
    'does not mix what it wrote last into a copy that was put there, once it %s',
    async (_, end) => {
      const folder = emptyFolder()
      const before = await filledStore({ events: 20, folder })
      await before.store.close()
      copyFileSync(before.path, `${before.path}.copy`)
      const store = await openStore(folder)
      onTestFinished(() => store.close())
      await append(store, before.job, 20, 40)
      renameSync(`${before.path}.copy`, before.path)
      await end(store, before.job)

      const after = await openStore(folder)
      onTestFinished(() => after.close())
      expect(await after.jobs.events(before.job)).toHaveLength(20)
    },
  )
})

it('a store that was closed is whole in its one file', async () => {
  const { store, job, path } = await filledStore({ events: 9 })
  await store.close()
  expect(existsSync(`${path}-wal`) ? statSync(`${path}-wal`).size : 0).toBe(0)
  const elsewhere = emptyFolder()
  copyFileSync(path, join(elsewhere, 'coilhound.sqlite'))
  const copy = await openStore(elsewhere)
  onTestFinished(() => copy.close())
  expect(await copy.jobs.events(job)).toHaveLength(9)
})
