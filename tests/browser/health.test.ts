import { describe, expect, it } from 'vitest'
import { allFits } from '../../server/knowledge/fits.ts'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { fewCases } from '../support/few-cases.ts'
import { lookUntil } from '../support/look-until.ts'

const wider = 'document.documentElement.scrollWidth - innerWidth'

describe('the page of knowledge health', () => {
  it('reloads itself until all is worked out, leaves the focus where it was, and says so', async () => {
    const knowledge = fewCases()
    const { page, complaints } = await openPage({}, { knowledge })
    // The page must not be whole before the focus is where it shall be left.
    let letGo = () => {}
    const ready = new Promise<void>((done) => {
      letGo = done
    })
    await page.route('**/health', async (route) => {
      if (route.request().headers()['hx-request']) await ready
      await route.continue()
    })
    await page.goto('/health')
    expect(await page.locator('#working').count()).toBe(1)
    await page.evaluate('document.querySelector(".masthead").dataset.kept = "yes"')
    const link = page.locator('.health tbody a').last()
    await link.focus()
    letGo()
    await page.locator('#kinds').waitFor()
    expect(await page.locator('#working').count()).toBe(0)
    expect(await page.locator('.masthead').getAttribute('data-kept')).toBe('yes')
    const focused = await page.evaluate('document.activeElement.getAttribute("href")')
    expect(focused).toBe(await link.getAttribute('href'))
    expect(await page.locator('#said').textContent()).toBe('All figures are worked out.')
    expect(await page.locator('h1').count()).toBe(1)
    expect(await page.locator('.health tbody tr').count()).toBe(allFits(knowledge).length)
    expect(complaints).toEqual([])
  })

  it('leads to a case and back', async () => {
    const { page } = await openPage({}, { knowledge: fewCases() })
    await page.goto('/')
    await page.getByRole('link', { name: 'Knowledge health' }).click()
    const link = page.locator('.health tbody a').first()
    const complaint = await link.textContent()
    await link.click()
    await page.locator('#never-pay').waitFor()
    expect(await page.locator('h1').textContent()).toBe(complaint)
    await page.locator('.health').getByRole('link', { name: 'Knowledge health' }).click()
    await page.getByRole('heading', { name: 'Knowledge health' }).waitFor()
  })

  it('comes to the same with scripts off, by looking again', async () => {
    const { page } = await openPage({ javaScriptEnabled: false }, { knowledge: fewCases() })
    await page.goto('/health')
    expect(await page.getByRole('link', { name: 'Look again' }).count()).toBe(1)
    await lookUntil(page, '#kinds')
    expect(await page.locator('#working').count()).toBe(0)
    await page.locator('.health tbody a').first().click()
    await page.locator('#never-pay').waitFor()
  })

  it.each(['light', 'dark'] as const)(
    'is sound when it is whole, in %s colours',
    async (colorScheme) => {
      const { page } = await openPage({ colorScheme }, { knowledge: fewCases() })
      await page.goto('/health')
      await page.locator('#kinds').waitFor()
      expect(await axeFindings(page)).toEqual([])
      for (const width of [320, 640, 1000, 1040, 1280]) {
        await page.setViewportSize({ width, height: 800 })
        expect(await page.evaluate(wider), `at ${width}`).toBe(0)
        expect(await page.evaluate(crooked), `at ${width}`).toEqual([])
      }
    },
  )
})

/** Cells whose words are wider than the room between their edges, which makes columns crooked. */
const crooked = `[...document.querySelectorAll('.health td, .health th')]
  .filter((cell) => !cell.closest('thead') || innerWidth > 1024)
  .filter((cell) => {
    const words = document.createRange()
    words.selectNodeContents(cell)
    const { paddingLeft, paddingRight } = getComputedStyle(cell)
    const room = cell.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight)
    return words.getBoundingClientRect().width > room + 1
  })
  .map((cell) => cell.textContent)`
