import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { openNewPage, openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { changing, checkOnPage, give, toNewJob } from '../support/journey.ts'
import { goTo, openTwin, send, take } from '../support/measuring.ts'
import { largest } from '../support/states.ts'

const phone = { viewport: { width: 360, height: 640 }, hasTouch: true }

const measured = 'winding-resistance.exciter-start.igniter-plug'
/** So few ohms that the leads decide. */
const small = 'primary-resistance.coil-left.coil-plug-left'

/** Where a part of the page stands in the window, in px from its top. */
const topOf = async (page: Page, part: string) => (await page.locator(part).boundingBox())!.y

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('on a phone, %s', (_, javaScriptEnabled) => {
  it('an answer brings the head of the job to the top of the screen', async () => {
    const { page } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    await toNewJob(page, largest)
    expect(await topOf(page, '.head')).toBeGreaterThan(20)
    const before = await checkOnPage(page)
    await page.mouse.wheel(0, 10_000)
    await give(page, hiddenFault(largest).typical(before!))
    await expect.poll(() => topOf(page, '.head').then(Math.abs)).toBeLessThanOrEqual(1)
    expect(await checkOnPage(page)).not.toBe(before)
    if (javaScriptEnabled) expect(await page.locator('#check:focus').count()).toBe(1)
  })

  it('a reading that cannot be taken says why in the first screen, and in the window’s title', async () => {
    const { page } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    await openTwin(page)
    await goTo(page, measured)
    await send(page, '36 apples')
    const problem = page.locator('#problem')
    await problem.waitFor()
    const { y, height } = (await problem.boundingBox())!
    expect(y).toBeGreaterThanOrEqual(0)
    expect(y + height).toBeLessThanOrEqual(phone.viewport.height)
    // Not under something else, nor cut off by the bar that it stands in.
    const hit = `(({ left, top, bottom }, at) => [top + 4, bottom - 4].map((y) =>
      document.elementFromPoint(left + 20, y)?.closest('#problem') !== null))(
      document.getElementById('problem').getBoundingClientRect())`
    expect(await page.evaluate(hit)).toEqual([true, true])
    expect(await page.title()).toMatch(/^Not taken: Job 1: /)
    expect(await page.locator('#typed').inputValue()).toBe('36 apples')
  })
})

describe('a reading that is being typed', () => {
  it('stays while one sees to the meter and its leads, and comes back to its own check', async () => {
    const { page } = await openPage()
    await openTwin(page)
    await goTo(page, measured)
    await page.locator('#typed').fill('365')
    await page.locator('#warmth').selectOption('running hot')
    await page.locator('.terms').getByRole('link', { name: 'Meter and leads' }).click()
    await page.getByLabel('Probes held together read').fill('0.2')
    await page.getByRole('button', { name: 'Use this meter' }).click()
    await page.locator('#reading').waitFor()
    expect(await checkOnPage(page)).toBe(measured)
    expect(await page.locator('#typed').inputValue()).toBe('365')
    expect(await page.locator('#warmth').inputValue()).toBe('running hot')
    await page.locator('.terms').getByRole('link', { name: 'Meter and leads' }).click()
    await page.getByRole('link', { name: 'Back to the job as it was' }).click()
    expect(await page.locator('#typed').inputValue()).toBe('365')
  })

  it('stays while the leads are zeroed beside it, and is of that check alone', async () => {
    const { page } = await openPage()
    await openTwin(page)
    await goTo(page, small)
    await page.locator('#typed').fill('1.2')
    await page.locator('#zero').fill('0.3')
    await page.getByRole('button', { name: 'Zero the leads' }).click()
    await page.locator('#zero').waitFor({ state: 'detached' })
    expect(await page.locator('#typed').inputValue()).toBe('1.2')
    await goTo(page, measured)
    expect(await page.locator('#typed').inputValue()).toBe('')
  })

  it('is gone from the window once it is sent', async () => {
    const { page } = await openPage()
    await openTwin(page)
    const row = await take(page, measured, '365')
    await row.getByText('Withdraw').click()
    await changing(page, () => row.getByRole('button', { name: 'It counts no more' }).click())
    await goTo(page, measured)
    expect(await page.locator('#typed').inputValue()).toBe('')
  })
})

describe('the keys beside the field', () => {
  const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true })

  it('type what a meter shows where the cursor is', async () => {
    const { page } = await openPage(phone)
    await openTwin(page)
    await goTo(page, measured)
    const field = page.locator('#typed')
    await field.fill('365')
    await page.keyboard.press('Home')
    await page.keyboard.press('ArrowRight')
    await key(page, 'decimal mark').tap()
    await page.keyboard.press('End')
    await key(page, 'kilo').tap()
    await key(page, 'and one more reading').tap()
    await page.keyboard.type('2')
    await key(page, 'mega').tap()
    expect(await field.inputValue()).toBe('3.65k 2M')
    expect(await page.locator('#typed:focus').count()).toBe(1)
  })

  it('are not there without scripts, nor where there is a keyboard', async () => {
    const without = await openPage({ ...phone, javaScriptEnabled: false })
    const atTheBench = await openNewPage()
    for (const { page } of [without, atTheBench]) {
      await openTwin(page)
      await goTo(page, measured)
      expect(await page.locator('.key').count()).toBe(4)
      expect(await page.locator('.key:visible').count()).toBe(0)
    }
  })
})

it('the number of the tenth reading stands on one line on a narrow phone', async () => {
  const { page } = await openPage(phone)
  await toNewJob(page, largest)
  const job = page.url()
  for (const [at, check] of [...largest.checks.keys()].slice(0, 10).entries()) {
    const form = { version: at + 1, check, choice: 'could-not-tell' }
    await page.request.post(`${job}/readings`, { form })
  }
  await page.goto(job)
  const heights = (await page.evaluate(
    `[...document.querySelectorAll('.readings > li')].map((row) => getComputedStyle(row, '::before').height)`,
  )) as string[]
  expect(heights).toHaveLength(10)
  expect(new Set(heights).size).toBe(1)
})
