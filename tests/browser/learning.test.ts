import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'

const lesson = '/learn/no-spark?machine=pedlar-1c'

/** What stands alone and is pressed. */
const lowTargets = `[...document.querySelectorAll('main :is(summary, .way, .see a)')]
  .filter((target) => target.checkVisibility() && target.getBoundingClientRect().height < 44)
  .map((target) => target.textContent)`

const printedSvgs = `[...document.querySelectorAll('main svg')]
  .filter((each) => each.getBoundingClientRect().width > 20).length`

describe('the pages that teach', () => {
  it('are sound, narrow and wide, light and dark', async () => {
    const { page } = await openPage({ viewport: { width: 320, height: 640 }, hasTouch: true })
    for (const at of ['/learn', '/learn/words', lesson]) {
      await page.setViewportSize({ width: 320, height: 640 })
      await page.goto(at)
      await page.evaluate(
        'for (const each of document.querySelectorAll("main details")) each.open = true',
      )
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth'), at).toBe(0)
      expect(await page.evaluate(lowTargets), at).toEqual([])
      expect(await axeFindings(page), at).toEqual([])
      await page.setViewportSize({ width: 1280, height: 720 })
      expect(await axeFindings(page), at).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axeFindings(page, 'colours'), at).toEqual([])
      await page.emulateMedia({ colorScheme: 'light' })
    }
  })

  it('are found and walked from the keyboard, without scripts', async () => {
    const { page } = await openPage({ javaScriptEnabled: false })
    await page.goto('/')
    await page.getByRole('link', { name: 'Learn', exact: true }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Learn the order' }).waitFor()
    await page.getByRole('link', { name: 'No spark at all' }).press('Enter')
    await page.getByText('On another machine').click()
    await page.getByRole('link', { name: 'Pedlar 1c' }).press('Enter')
    await page.getByRole('heading', { level: 1, name: 'No spark at all' }).waitFor()
    expect(page.url()).toContain('machine=pedlar-1c')
    await page.getByRole('link', { name: 'Practise it on this machine' }).press('Enter')
    expect(await page.getByLabel('Machine').inputValue()).toBe('pedlar-1c')
    expect(await page.getByLabel('Complaint').inputValue()).toBe('no-spark')
    await page.getByRole('link', { name: 'Learn the order first' }).press('Enter')
    await page.getByRole('link', { name: 'Words of the trade' }).press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Words of the trade' }).waitFor()
  })

  it('print with tree and drawings, and nothing to press', async () => {
    const { page } = await openPage({ viewport: { width: 718, height: 1000 } })
    await page.goto(lesson)
    await page.emulateMedia({ media: 'print' })
    const pressed = await page.evaluate(
      `[...document.querySelectorAll('main :is(a, button, summary)')].filter((each) => each.checkVisibility()).length`,
    )
    expect(pressed).toBe(0)
    expect(await page.locator('.tree-drawing').isVisible()).toBe(true)
    expect(await page.evaluate(printedSvgs)).toBeGreaterThan(5)
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0)
  })
})
