import { expect, it, onTestFinished } from 'vitest'
import { openStore } from '../../server/store/open.ts'
import type { NewPhoto } from '../../server/store/photos/records.ts'
import { emptyFolder } from '../support/folder.ts'

const at = new Date(2031, 4, 7)
const photo: NewPhoto = {
  ...{ check: 'look', type: 'image/png', width: 3, height: 2, addedAt: at },
  bytes: Uint8Array.of(0, 1, 255, 0),
}

async function storeWithJobs() {
  const store = await openStore(emptyFolder())
  onTestFinished(() => store.close())
  const head = { machine: 'pump', complaint: 'no-spark', note: '' }
  const open = () => store.jobs.open(head, { kind: 'opened', body: {}, at })
  return { photos: store.photos, job: await open(), other: await open() }
}

it('a photo is read back byte for byte, and only from its own job', async () => {
  const { photos, job, other } = await storeWithJobs()
  const id = (await photos.add(job, photo, 9))!
  const { type, bytes, addedAt } = (await photos.read(job, id))!
  expect({ type, addedAt }).toEqual({ type: 'image/png', addedAt: at })
  expect([...bytes]).toEqual([0, 1, 255, 0])
  expect(await photos.read(other, id)).toBe(null)
  const { bytes: _, ...about } = photo
  expect(await photos.list(job)).toEqual([{ id, ...about }])
  expect(await photos.list(other)).toEqual([])
})

it('a job holds no more photos than it may, and one deleted makes room', async () => {
  const { photos, job, other } = await storeWithJobs()
  const first = (await photos.add(job, photo, 2))!
  await photos.add(job, { ...photo, check: null }, 2)
  expect(await photos.add(job, photo, 2)).toBe(null)
  expect(await photos.list(job)).toHaveLength(2)
  await photos.remove(other, first)
  expect(await photos.list(job)).toHaveLength(2)
  await photos.remove(job, first)
  expect((await photos.list(job)).map(({ check }) => check)).toEqual([null])
  expect(await photos.add(job, photo, 2)).toBeGreaterThan(first + 1)
})

it('no photo is kept of a job that is not there', async () => {
  const { photos } = await storeWithJobs()
  await expect(photos.add(99, photo, 9)).rejects.toThrow()
})
