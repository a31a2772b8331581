import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { states } from '../support/states.ts'

const wider = 'document.documentElement.scrollWidth - innerWidth'

/** Links and buttons that stand alone; links inside a sentence may be as low as their line. */
const lowTargets = `[...document.querySelectorAll('button, summary, select, .take input, .masthead a, .room > h2 > a, .last a, .box-head .label a, .checks a, .change a, .complaints a, .working a, .health tbody a, .way')]
  .filter((target) => target.checkVisibility() && target.getBoundingClientRect().height < 44)
  .map((target) => target.textContent)`

const narrow = { viewport: { width: 320, height: 640 }, hasTouch: true }
const wide = { width: 1280, height: 720 }

it.each(Object.entries(states))(
  '%s is sound, narrow and wide, light and dark',
  async (_, bring) => {
    const { page } = await openPage(narrow)
    await bring(page)
    expect.soft(await page.evaluate(wider), 'too wide for 320 pixels').toBe(0)
    expect.soft(await page.evaluate(lowTargets), 'too low for gloves').toEqual([])
    await page.setViewportSize(wide)
    expect.soft(await axeFindings(page), 'in light colours').toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect.soft(await axeFindings(page, 'colours'), 'in dark colours').toEqual([])
  },
)

it('finds what is wrong, when something is', async () => {
  const { page } = await openPage()
  await page.goto('/')
  await page.evaluate('document.querySelector("h1").insertAdjacentHTML("afterend", "<img src=x>")')
  expect(await axeFindings(page)).toEqual([expect.stringContaining('image-alt')])
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.evaluate('document.querySelector("h1").style.color = "#222"')
  expect(await axeFindings(page, 'colours')).toEqual([expect.stringContaining('color-contrast')])
})

describe('at 320 pixels', () => {
  it('the reading has a large field', async () => {
    const { page } = await openPage({ viewport: { width: 320, height: 640 } })
    await states['a measurement at a connector that is hard to reach']!(page)
    const field = page.locator('#typed')
    expect((await field.boundingBox())!.height).toBeGreaterThanOrEqual(44)
    const size = await page.evaluate(`getComputedStyle(document.querySelector('#typed')).fontSize`)
    expect(Number.parseFloat(String(size))).toBeGreaterThanOrEqual(24)
  })
})

it('at 1280 pixels the tree stands beside the work', async () => {
  const { page } = await openPage({ viewport: { width: 1280, height: 800 } })
  await states['a job just opened']!(page)
  const work = (await page.locator('.work').boundingBox())!
  const tree = (await page.locator('.for-tree').boundingBox())!
  expect(tree.x).toBeGreaterThanOrEqual(work.x + work.width)
})
