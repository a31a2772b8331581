import { expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

it('puts no new fuse into a wire that is known to be grounded', async () => {
  const { http } = await readyApp()
  const blown = caseOf('haulmoor-1e', 'blows-the-fuse')
  const job = await onPhone(http, blown, ['small-tools', 'meter', 'light'])
  const way = 'One new fuse of the right number'
  expect(await wordsOn(http, `${job}/home`)).toContain(way)
  const check = 'wire-to-ground.wires-feed'
  await post(http, `${job}/readings`, { version: 1, check, typed: '0.4', kept: '0.4' }).expect(303)
  await post(http, `${job}/takes`, { version: 2, check, typed: '0.4', kept: '0.4' }).expect(303)
  expect(await wordsOn(http, `${job}/home`)).not.toContain(way)
})

it('says in full how a machine is held again once they had gone with it', async () => {
  const { http } = await readyApp()
  const cranking = caseOf('pedlar-1c', 'no-spark')
  const job = await onPhone(http, cranking, ['tape', 'light'])
  const check = 'spark-old-plug.single'
  const held = /See that it cannot move off: firm and level/i
  await post(http, `${job}/readings`, { version: 1, check, choice: 'none' }).expect(303)
  const next = `${job}?check=plug-after-pulls&line=99`
  expect(await wordsOn(http, next)).not.toMatch(held)
  await post(http, `${job}/tries`, { version: 2, way: 'stop-apart', choice: 'helped' }).expect(303)
  const back = { version: 3, way: 'stop-apart', choice: 'taken-back' }
  await post(http, `${job}/tries`, back).expect(303)
  expect(await wordsOn(http, next)).toMatch(held)
})
