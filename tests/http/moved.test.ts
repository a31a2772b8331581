import { expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { caseOf, wordsOn } from '../support/on-phone.ts'

const kase = caseOf('freshet-4d', 'misfires-at-speed')
const wiring = 'wire-end-to-end.wires-pickup-outer'

it('takes the highest of what shows while a wire is bent, and has no pins cleaned for another take', async () => {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  expect(await wordsOn(http, `${job}?check=${wiring}`)).toContain('The highest counts')
  const typed = { version: 1, check: wiring, typed: '0.5 46.2 0.6 38' }
  await post(http, `${job}/readings`, typed).expect(303)
  const words = await wordsOn(http, job)
  expect(words).toContain('read 46.2')
  expect(words).not.toContain('poor contact')
  expect(words).toContain('highest of 4 touches: 0.5 Ω, 46.2 Ω, 0.6 Ω, 38 Ω')
  const again = await wordsOn(http, `${job}?take=${wiring}`)
  expect(again).toContain('without cleaning its pins')
  expect(again).not.toContain('lean both places')
})

it('takes a wire that lets go for a moment as open, whatever it shows at rest', async () => {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  const typed = { version: 1, check: wiring, typed: '0.2 OL 0.2' }
  await post(http, `${job}/readings`, typed).expect(303)
  expect(await wordsOn(http, job)).toMatch(/end to end.*(open|OL)/)
})

it('is not cleared by a take that shows it whole: what lets go once lets go again', async () => {
  const { http } = await readyApp()
  const take = async (first: string, second: string) => {
    const job = await openJob(http, kase)
    await post(http, `${job}/readings`, { version: 1, check: wiring, typed: first }).expect(303)
    await post(http, `${job}/takes`, { version: 2, check: wiring, typed: second }).expect(303)
    return wordsOn(http, job)
  }
  expect(await take('OL', '0.3')).toMatch(
    /Outer pickup wiring read OL. (Bad: open|Not sure: perhaps open)/,
  )
  expect(await take('46.2', '0.3')).toMatch(
    /Outer pickup wiring read 46.2 Ω. (Bad|Not sure: perhaps)/,
  )
  expect(await take('0.2', '0.3')).toMatch(/Outer pickup wiring read 0.2 Ω. Good/)
})

it('asks for a hand on a part once the engine has run, and judges a warm one as warm', async () => {
  const { http } = await readyApp()
  const job = await openJob(http, kase, { air: '-5' })
  const pickup = [...kase.checks.keys()].find((id) => id.startsWith('winding-resistance.pickup'))!
  const ran = [...kase.checks.values()].find(({ engine, asked, measurand, cools }) => {
    return engine === 'running' && !asked && !measurand && !cools
  })!
  const page = `${job}?check=${pickup}`
  expect(await wordsOn(http, page)).not.toContain('The engine has run since')
  const [choice] = ran.outcomes
  await post(http, `${job}/readings`, { version: 1, check: ran.id, choice: choice! }).expect(303)
  expect(await wordsOn(http, page)).toContain('The engine has run since. Lay a hand on the part')
  const { high } = kase.checks.get(pickup)!.measurand!.limits
  // At the top of its limits at 20 °C it shows a tenth more at 45 °C, and far too much for −5 °C.
  const warm = { check: pickup, typed: String(Math.round(high! * 1.08)) }
  await post(http, `${job}/readings`, { ...warm, version: 2, warmth: 'as the air' }).expect(303)
  expect(await wordsOn(http, job)).toMatch(/high/)
  await post(http, `${job}/corrections`, { ...warm, version: 3, warmth: 'hand-warm' }).expect(303)
  expect(await wordsOn(http, job)).not.toMatch(/Bad: high|perhaps high/)
})
