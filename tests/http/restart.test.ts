import { expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { emptyFolder } from '../support/folder.ts'
import { measuredCheck, openJob, post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const kase = anyCase()

it('a job is in the list after a restart, and stands where it stood', async () => {
  const data = emptyFolder()
  const before = await readyApp({ data })
  const job = await openJob(before.http, kase)
  const form = { version: 1, check: measuredCheck(kase).id, typed: '4k7' }
  await post(before.http, `${job}/readings`, form).expect(303)
  await before.app.close()
  await before.store.close()

  const { http } = await readyApp({ data })
  const list = await http.get('/jobs').expect(200)
  expect(addressesIn(list.text)).toContain(job)
  expect(textIn(list.text)).toContain(kase.machine.name)
  const page = await http.get(job).expect(200)
  expect(valueIn(page.text, 'version')).toBe('2')
  expect(textIn(page.text)).toContain('4.7 kΩ')
})
