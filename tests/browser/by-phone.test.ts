import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { allCases } from '../support/app.ts'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { faultOf } from '../support/hidden-fault.ts'

const phone = { viewport: { width: 360, height: 780 }, hasTouch: true }
const kase = allCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'pedlar-1c',
)!

async function openByPhone(page: Page): Promise<void> {
  await page.goto(`/jobs/new?machine=${kase.machine.id}&complaint=${kase.complaint.id}`)
  await page.getByLabel('At it').selectOption('An owner, by phone')
  expect(await page.locator('#tools').isVisible()).toBe(false)
  expect(await page.locator('#meter').isVisible()).toBe(false)
  await page.getByLabel('What rides along').check()
  await page
    .locator('li:has(:checked) summary')
    .filter({ hasText: 'Change What rides along' })
    .click()
  // Hands and a plug spanner, and some tape.
  await page.locator('[name="kit-along"][value="spare-plug"]').uncheck()
  await page.getByRole('button', { name: 'Open the job' }).click()
  await page.locator('.say').waitFor()
}

/** Which check of which version of the job stands there; no version once there is nothing more to ask. */
async function standsNow(page: Page): Promise<string> {
  const versions = page.locator('[name="version"]')
  const version = (await versions.count()) > 0 ? await versions.first().getAttribute('value') : ''
  return `${await page.locator('.phone-ticket').textContent()} ${version}`
}

/** Reads every sentence out, and returns them all. */
async function sayAll(page: Page): Promise<string[]> {
  const said: string[] = []
  for (let most = 0; most < 40; most++) {
    said.push((await page.locator('.say').textContent())!.trim())
    const next = page.getByRole('link', { name: 'Next', exact: true })
    if ((await next.count()) === 0) return said
    const place = await page.locator('.say-box .place').textContent()
    await next.click()
    await expect.poll(() => page.locator('.say-box .place').textContent()).not.toBe(place)
  }
  throw new Error('The sentences never end.')
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('an owner with hands and a plug spanner, %s', (_, javaScriptEnabled) => {
  it('comes from "no spark" to what got them home, and the bench takes it over', async () => {
    const { page, complaints } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    const stopWire = kase.model.cutSets.findIndex(
      ({ faults }) => faults[0] === 'wires-stop.grounded',
    )
    const fault = faultOf(kase, stopWire)
    await openByPhone(page)
    const job = new URL(page.url()).pathname
    const asked: string[] = []
    for (let most = 0; most < 20; most++) {
      if (most === 0) await sayAll(page)
      else await page.goto(`${job}?line=99`)
      if ((await page.locator('#reading').count()) === 0) break
      const check = await page.locator('#reading [name="check"]').getAttribute('value')
      asked.push(check!)
      const answer = fault.typical(check!)
      if (!('choose' in answer)) throw new Error(`${check} wants a meter`)
      const before = await standsNow(page)
      await page.locator(`#reading button[value="${answer.choose}"]`).click()
      await expect.poll(() => standsNow(page)).not.toBe(before)
    }
    expect(asked.length).toBeGreaterThan(2)
    expect(await page.locator('.all-said').textContent()).toContain('found:')
    await page.getByRole('link', { name: 'Getting home' }).click()
    expect(await page.locator('#stay').textContent()).toContain('Stay and call for help')
    await page.getByRole('link', { name: 'Run it with the stop wire apart' }).click()
    const said = await sayAll(page)
    expect(said.join(' ')).toContain('Tape both ends')
    expect(said[said.findIndex((line) => line.startsWith('Show me')) + 1]).toContain(
      'we do not try this',
    )
    await page.getByRole('button', { name: 'It runs, the trouble is gone, and they go' }).click()
    await page.locator('.phone-ways').waitFor()

    await page.goto(`${job}?line=99`)
    await page.getByRole('link', { name: /bench/ }).click()
    await page.getByRole('button', { name: 'Change it' }).click()
    await page.locator('details.head > summary').click()
    const head = await page.locator('details.head').textContent()
    expect(head).toContain('Run it with the stop wire apart')
    expect(head).toMatch(/By phone\s*\d+ readings, as the owner told them/)
    expect(await page.locator('.say-box').count()).toBe(0)
    expect(complaints).toEqual([])
  })
})

describe('the page that is read out', () => {
  it('fits a narrow phone, is worked from the keyboard, and passes axe in light and dark', async () => {
    const { page } = await openPage(
      { ...phone, viewport: { width: 320, height: 640 } },
      {},
      'folded',
    )
    await openByPhone(page)
    const wide = () => page.evaluate('document.documentElement.scrollWidth')
    expect(await wide()).toBeLessThanOrEqual(320)
    expect(await axeFindings(page)).toEqual([])
    const first = await page.locator('.say').textContent()
    await page.locator('.turn.go').focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => page.locator('.say').textContent()).not.toBe(first)
    expect(await page.locator('.turn.go:focus').count()).toBe(1)
    const said = await sayAll(page)
    // Where there is nothing left to say, whoever works by keyboard or by ear stands at the question.
    const focused = page.locator('legend:focus, .asks:focus')
    expect(await focused.textContent()).toContain(said.findLast((line) => line.endsWith('?')))
    expect(await wide()).toBeLessThanOrEqual(320)
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, 'colours')).toEqual([])
    await page.goto(`${new URL(page.url()).pathname}/home`)
    expect(await wide()).toBeLessThanOrEqual(320)
    expect(await axeFindings(page, 'colours')).toEqual([])
  })
})

it('has a square to tick at each sentence on paper, and none on the screen', async () => {
  const { page } = await openPage()
  await openByPhone(page)
  const squares = () =>
    page.evaluate<boolean[]>(`[...document.querySelectorAll('.all-said li')].map((line) => {
      const { content, borderTopWidth, width, height } = getComputedStyle(line, '::before')
      return content !== 'none' && borderTopWidth === '1px' && width === height
    })`)
  expect(new Set(await squares())).toEqual(new Set([false]))
  await page.emulateMedia({ media: 'print' })
  expect((await squares()).length).toBeGreaterThan(2)
  expect(new Set(await squares())).toEqual(new Set([true]))
})
