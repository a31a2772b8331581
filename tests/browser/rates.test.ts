import request from 'supertest'
import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { confirm, runningClock } from '../support/confirmed.ts'
import { anyCase } from '../support/knowledge.ts'

const kase = anyCase()
const address = `/rates/${kase.machine.id}`
const [fault] = [...kase.faults.keys()]

/** A window on a shop that has confirmed three repairs. */
async function shop(options: Parameters<typeof openPage>[0] = {}) {
  const opened = await openPage(options, { now: runningClock() })
  for (let count = 0; count < 3; count += 1) {
    await confirm(request(opened.address), kase, fault!)
  }
  return opened
}

/** What stands alone and is pressed. */
const lowTargets = `[...document.querySelectorAll('button, summary, .way, .from a, main input:not([type=hidden])')]
  .filter((target) => target.checkVisibility() && target.getBoundingClientRect().height < 44)
  .map((target) => target.textContent)`

describe('the pages of base rates', () => {
  it('are sound, narrow and wide, light and dark', async () => {
    const { page } = await shop({ viewport: { width: 320, height: 640 }, hasTouch: true })
    for (const at of ['/rates', address]) {
      await page.setViewportSize({ width: 320, height: 640 })
      await page.goto(at)
      await page.evaluate(
        'for (const each of document.querySelectorAll("details")) each.open = true',
      )
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0)
      expect(await page.evaluate(lowTargets)).toEqual([])
      await page.setViewportSize({ width: 1280, height: 720 })
      expect(await axeFindings(page)).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axeFindings(page, 'colours')).toEqual([])
      await page.emulateMedia({ colorScheme: 'light' })
    }
  })

  it('leave a job out and take it in again without scripts', async () => {
    const { page } = await shop({ javaScriptEnabled: false })
    await page.goto('/')
    await page.getByRole('link', { name: 'Base rates' }).click()
    const { maker, name } = kase.machine
    await page.getByRole('link', { name: `${maker} ${name}` }).click()
    await page.getByRole('link', { name: 'Leave out No. 0002' }).click()
    expect(await page.getByLabel('Number of the job').inputValue()).toBe('2')
    await page.getByRole('button', { name: 'Leave it out' }).click()
    await page.getByText('Say in a few words why it is left out.').waitFor()
    expect(await page.getByLabel('Number of the job').inputValue()).toBe('2')
    await page.getByLabel('Why').fill('a practice machine')
    await page.getByRole('button', { name: 'Leave it out' }).click()
    await page.getByText('Left out: a practice machine').waitFor()
    await page.getByRole('heading', { level: 1 }).getByText(name).waitFor()
    expect(await page.locator('.lead').textContent()).toMatch(/^2 confirmed repairs/)
    await page.getByRole('button', { name: 'Take in again No. 0002' }).click()
    expect(await page.locator('.lead').textContent()).toMatch(/^3 confirmed repairs/)
  })
})
