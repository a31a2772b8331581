import { expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const single = caseOf('pedlar-1c', 'no-spark')

/** Percent of suspicion on this part. */
async function percentOf(http: Http, job: string, part: string): Promise<number> {
  const words = await wordsOn(http, `${job}?whole=yes&open=suspects`)
  return Number(new RegExp(`\\b${part},? (\\d+) %`).exec(words)?.[1] ?? 0)
}

const tried = (way: string, choice: string) => ({ version: 1, way, choice })

it('suspects the stop circuit where it runs with its wire apart', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, single, ['tape', 'light'])
  const before = await percentOf(http, job, 'Tether switch')
  await post(http, `${job}/tries`, tried('stop-apart', 'helped')).expect(303)
  const [tether, plug] = [
    await percentOf(http, job, 'Tether switch'),
    await percentOf(http, job, 'Spark plug'),
  ]
  expect(tether).toBeGreaterThan(before)
  expect(tether).toBeGreaterThan(plug)
})

it('suspects a switch still that was worked in vain: it may be shorted inside', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, caseOf('larkfell-2i', 'no-spark'), ['plug-wrench', 'light'])
  const before = await percentOf(http, job, 'Stop switch')
  const worked = { version: 1, of: 'stop-switch', fault: 'stop-switch.stuck-closed' }
  await post(http, `${job}/mendings`, { ...worked, choice: 'still-there' }).expect(303)
  const after = await percentOf(http, job, 'Stop switch')
  expect(after).toBeLessThan(before)
  expect(after).toBeGreaterThan(before / 2)
})

it('suspects a plug less where a new one was tried in vain, and all the same where a way home says nothing', async () => {
  const { http } = await readyApp()
  const kit = ['plug-wrench', 'spare-plug', 'light']
  const job = await onPhone(http, single, kit)
  const before = await percentOf(http, job, 'Spark plug')
  await post(http, `${job}/tries`, tried('other-plug', 'no-help')).expect(303)
  expect(before).toBeGreaterThan(10)
  expect(await percentOf(http, job, 'Spark plug')).toBeLessThan(before / 2)
})

it('goes home on a little throttle where it has just run so, and not where that was in vain, nor in a boat', async () => {
  const { http } = await readyApp()
  const way = 'Keep it running with a little throttle'
  for (const [machine, choice, isOffered] of [
    ['haulmoor-1e', 'runs-on', true],
    ['haulmoor-1e', 'dies', false],
    ['ferrymere-3t', 'runs-on', false],
  ] as const) {
    const job = await onPhone(http, caseOf(machine, 'starts-then-dies'))
    const ran = { version: 1, check: 'throttle-held.carburettor', choice }
    await post(http, `${job}/readings`, ran).expect(303)
    const home = await wordsOn(http, `${job}/home`)
    expect(home.includes(way), `${machine} ${choice}`).toBe(isOffered)
  }
})

it('suspects the battery no more where it starts from another one, whatever ran it down', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, caseOf('brackenway-1b', 'not-charging'), ['charged-battery'])
  const before = await percentOf(http, job, 'Battery')
  await post(http, `${job}/tries`, tried('jump', 'helped')).expect(303)
  expect(before).toBeGreaterThan(10)
  expect(await percentOf(http, job, 'Battery')).toBe(before)
})

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
