import { expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

it('has a machine held again before hands go to it, once it was worked for a trial', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, caseOf('haulmoor-1e', 'cuts-out'), ['light', 'tape'])
  const of = 'cap-look.cap'
  await post(http, `${job}/readings`, { version: 1, check: of, choice: 'loose' }).expect(303)
  expect(await wordsOn(http, `${job}?line=99`)).toContain('undo what held it in place')
  await post(http, `${job}/mendings`, { version: 2, of, choice: 'still-there' }).expect(303)
  const held = 'See that it cannot move off: out of gear, brake on'
  const next = `${job}?check=stop-wire-look.wires-stop&line=99`
  expect(await wordsOn(http, next)).toContain(held)
  const seen = { version: 3, check: 'stop-wire-look.wires-stop', choice: 'whole' }
  await post(http, `${job}/readings`, seen).expect(303)
  expect(await wordsOn(http, `${job}?check=ground-look.igniter-ground&line=99`)).not.toContain(held)
})

it('says how it is held once on a page, and lets down only what may be lifted', async () => {
  const { http } = await readyApp()
  const kase = caseOf('haulmoor-1e', 'cuts-out')
  const job = await onPhone(http, kase)
  const of = 'cap-look.cap'
  await post(http, `${job}/readings`, { version: 1, check: of, choice: 'loose' })
  const runs = [...kase.checks.values()].find(
    ({ setups, owner }) => owner.fit && setups.some(({ id }) => id === 'safe-to-run'),
  )
  const words = await wordsOn(http, `${job}?line=99`)
  expect(words).toContain('undo what held it in place')
  expect(words).not.toContain('a wheel or track is lifted')
  await post(http, `${job}/mendings`, { version: 2, of, choice: 'still-there' }).expect(303)
  const next = await wordsOn(http, `${job}?check=${runs!.id}&line=99`)
  const said = next.slice(next.lastIndexOf('All of it, in order'))
  expect(said.match(/See that it cannot move off: out of gear/g)).toHaveLength(1)
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
