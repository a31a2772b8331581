import { expect, it } from 'vitest'
import { allCases, readyApp } from '../support/app.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const complained = allCases().filter(({ complaint }) => complaint.id === 'kicks-back')
const kase = allCases().find(({ checks }) => checks.has('ask-kick-back'))!
const turning = [...kase.checks.values()].filter(({ engine }) => engine !== 'stopped')
const keyLook = [...kase.checks.keys()].find((id) => id.startsWith('key-look'))!
const warning = 'Nobody pulls or starts it until the flywheel key has been looked at.'

it('once it kicks back nothing that turns the engine is asked for until the key has been seen', async () => {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  const fault = hiddenFault(kase)
  const page = async (query = '') => (await http.get(`${job}${query}`).expect(200)).text
  const kicks = { version: 1, check: 'ask-kick-back', choice: 'kicks' }
  await post(http, `${job}/readings`, kicks).expect(303)

  expect(textIn(await page(`?check=${turning[0]!.id}`))).toContain(warning)
  for (let html = await page(); html.includes('id="reading"'); html = await page()) {
    const check = valueIn(html.slice(html.indexOf('id="reading"')), 'check')
    if (check === keyLook) break
    expect(kase.checks.get(check)!.engine, check).toBe('stopped')
    const typical = fault.typical(check)
    const answer: Record<string, string> =
      'choose' in typical ? { choice: typical.choose } : { typed: typical.type, kept: typical.type }
    const fields = { version: valueIn(html, 'version'), check, ...answer }
    await post(http, `${job}/readings`, fields).expect(303)
  }

  const version = valueIn(await page(), 'version')
  await post(http, `${job}/readings`, { version, check: keyLook, choice: 'whole' }).expect(303)
  expect(textIn(await page(`?check=${turning[0]!.id}`))).not.toContain(warning)
})

it.each(complained.map((each) => [each.machine.id, each] as const))(
  'whoever complains of it is asked for nothing that turns the engine until then: %s',
  async (_, each) => {
    const { http } = await readyApp()
    const job = await openJob(http, each)
    const page = async (query = '') => (await http.get(`${job}${query}`).expect(200)).text
    const turns = [...each.checks.values()].filter(({ engine }) => engine !== 'stopped')
    const look = [...each.checks.keys()].find((id) => /^(key-look|points-opening)\./.test(id))!
    const hasPoints = look.startsWith('points-opening')
    // Points open by the crankshaft: there the key moves no spark, and is not asked for.
    expect(hasPoints).toBe(each.machine.parts.some(({ role }) => role === 'points'))
    const until = hasPoints ? 'Nobody pulls or starts it until it has been seen where' : warning

    expect(turns.length).toBeGreaterThan(0)
    for (const { id } of turns) expect(textIn(await page(`?check=${id}`))).toContain(until)
    const seen: Record<string, string> = hasPoints
      ? { typed: '2.2', kept: '2.2' }
      : { choice: 'whole' }
    const fields = { version: valueIn(await page(), 'version'), check: look, ...seen }
    await post(http, `${job}/readings`, fields).expect(303)
    for (const { id } of turns) expect(textIn(await page(`?check=${id}`))).not.toContain(until)
  },
)
