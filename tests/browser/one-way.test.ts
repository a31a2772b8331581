import { expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { openMachine } from '../support/measuring.ts'

it.each([
  ['with scripts', true],
  ['without scripts', false],
])(
  'twelve readings fit a narrow phone and come to one answer, %s',
  async (_, javaScriptEnabled) => {
    const { page, complaints } = await openPage({
      viewport: { width: 360, height: 640 },
      hasTouch: true,
      javaScriptEnabled,
    })
    await openMachine(page, { machine: 'brackenway-1b', complaint: 'not-charging' })
    await page.goto(`${new URL(page.url()).pathname}?check=diode-test.rectifier`)
    await page.locator('.cells > summary').click()
    const cells = page.locator('input[name=cell]')
    expect(await cells.count()).toBe(12)
    for (let i = 0; i < 12; i += 1) {
      const { x, width, height } = (await cells.nth(i).boundingBox())!
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x + width).toBeLessThanOrEqual(360)
      expect(height).toBeGreaterThanOrEqual(44)
      await cells.nth(i).fill(i < 3 || i > 8 ? '0.52' : 'OL')
    }
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360)
    await cells.nth(11).press('Enter')
    await page
      .getByText('All pass one way only, and the three of a row read alike')
      .first()
      .waitFor()
    await page.getByText('0.52; 0.52; 0.52; OL').first().waitFor()
    expect(complaints).toEqual([])
  },
)
