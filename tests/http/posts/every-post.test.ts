import { beforeAll, describe, expect, it } from 'vitest'
import { appForAll, twin } from '../../support/app.ts'
import { post } from '../../support/job.ts'
import { postRoutes } from '../../support/post-routes.ts'
import { refusalIn } from '../../support/refusal.ts'
import { begunJobs, family, posts } from './posts.ts'

const { http, app } = appForAll()
let jobs: Awaited<ReturnType<typeof begunJobs>>

beforeAll(async () => {
  jobs = await begunJobs(http())
}, 60_000)

describe.each(posts)('what is posted to $path', ({ path, at, refused }) => {
  const address = () =>
    path
      .replace(':id', jobs[at ?? 'begun'])
      .replace(':machine', path.startsWith('/rates') ? family : twin().id)

  it.each(Object.entries(refused))(
    'comes back with a sentence and all that was typed: %s',
    async (_, [status, fields, ...kept]) => {
      const answer = await post(http(), address(), fields)
      expect(answer.status).toBe(status)
      const { says, holds } = refusalIn(answer)
      expect(says.filter((sentence) => /^\p{Lu}.{12,}[.?]$/su.test(sentence))).not.toEqual([])
      expect(kept.filter((text) => !holds.includes(text))).toEqual([])
    },
  )

  it('is for nobody where there is no such job or machine, and is kept all the same', async () => {
    const nowhere = path.replace(':id', '999').replace(':machine', 'warp-drive')
    if (nowhere === path) return
    const answer = await post(http(), nowhere, {
      note: 'not lost',
      number: 'not lost',
      typed: 'not lost',
    })
    expect(answer.status).toBe(404)
    expect(refusalIn(answer).holds).toContain('not lost')
  })

  it('leaves an address that can be opened', async () => {
    const opened = await http().get(address()).redirects(1)
    expect(opened.status).toBe(200)
  })
})

it('no form of the app is left out', async () => {
  const known = new Set(posts.map(({ path }) => path))
  const ofPractice = (path: string) => path.startsWith('/practice/')
  const taking = await postRoutes(app(), http())
  expect(taking.filter(ofPractice)).not.toEqual([])
  expect(taking.filter((path) => !ofPractice(path) && !known.has(path))).toEqual([])
})
