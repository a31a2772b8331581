import { describe, expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { states } from '../support/states.ts'

const wider = 'document.documentElement.scrollWidth - innerWidth'

/** Links and buttons that stand alone; links inside a sentence may be as low as their line. */
const lowTargets = `[...document.querySelectorAll('button, summary, select, .again input, .masthead a, .checks a, .change a, .complaints a, .working a, .health tbody a, .way')]
  .filter((target) => target.checkVisibility() && target.getBoundingClientRect().height < 48)
  .map((target) => target.textContent)`

describe('at 320 pixels, with gloves on', () => {
  it.each(Object.entries(states))(
    '%s needs no scrolling sideways and has high targets',
    async (_, bring) => {
      const { page } = await openPage({ viewport: { width: 320, height: 640 }, hasTouch: true })
      await bring(page)
      expect(await page.evaluate(wider)).toBe(0)
      expect(await page.evaluate(lowTargets)).toEqual([])
    },
  )

  it('the reading has a large field', async () => {
    const { page } = await openPage({ viewport: { width: 320, height: 640 } })
    await states['a measurement at a connector that is hard to reach']!(page)
    const field = page.locator('#typed')
    expect((await field.boundingBox())!.height).toBeGreaterThanOrEqual(56)
    const size = await page.evaluate(`getComputedStyle(document.querySelector('#typed')).fontSize`)
    expect(Number.parseFloat(String(size))).toBeGreaterThanOrEqual(24)
  })
})

it('at 1280 pixels the tree stands beside the work', async () => {
  const { page } = await openPage({ viewport: { width: 1280, height: 800 } })
  await states['a job just opened']!(page)
  const work = (await page.locator('.work').boundingBox())!
  const tree = (await page.locator('.tree').boundingBox())!
  expect(tree.x).toBeGreaterThanOrEqual(work.x + work.width)
})
