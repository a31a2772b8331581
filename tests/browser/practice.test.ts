import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import { seedOf } from '../../server/practice/world/chance.ts'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const kase = caseFor(knowledge, 'pedlar-1c', 'no-spark')

/** The first seed that hides this fault. */
function seedHiding(fault: string): string {
  for (let seed = 0; seed < 5000; seed += 1) {
    if (drawHidden(knowledge, kase, seedOf(String(seed), 0)).faults[0] === fault)
      return String(seed)
  }
  throw new Error(`no seed hides ${fault}`)
}

/** Fills in the form and begins. */
async function begin(page: Page, seed: string): Promise<void> {
  await page.goto('/')
  await page.getByRole('link', { name: 'Practice bench' }).click()
  await page.getByLabel('Machine').selectOption('pedlar-1c')
  await page.getByLabel('Complaint').selectOption('no-spark')
  await page.getByLabel('Your name').fill('Wilf')
  await page.getByLabel('Seed').fill(seed)
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByRole('heading', { name: 'No spark at all' }).waitFor()
}

/** Unfolds a group of checks, picks one and makes it. */
async function make(page: Page, group: string, check: string): Promise<string> {
  await page.locator('.all-checks summary').filter({ hasText: group }).first().click()
  await page.getByRole('link', { name: check }).click()
  await page.locator('#check').waitFor()
  await page.locator('.do-it .go').click()
  await page.locator('#last').waitFor()
  return (await page.locator('#last .figure').textContent())!
}

const wider = 'document.documentElement.scrollWidth - innerWidth'

describe('a round at the practice bench', () => {
  it('is won by measuring, and shows both orders afterwards', async () => {
    const { page, complaints } = await openPage()
    await begin(page, seedHiding('exciter.open'))
    expect(await page.locator('.suspects').count()).toBe(0)
    const shown = await make(
      page,
      'Exciter winding',
      'Resistance of the exciter winding at the igniter plug',
    )
    expect(shown).toBe('OL')
    await page.getByRole('button', { name: /Put back, 0\.5 min.*igniter plug/ }).click()
    expect(
      await make(page, 'Exciter winding', 'Resistance of the exciter winding at the magneto plug'),
    ).toBe('OL')
    await page.getByLabel('The part that has failed').selectOption('exciter')
    await page.getByRole('button', { name: 'Buy it and fit it' }).click()
    await page.getByText('You named the part that had failed.').waitFor()
    expect(await page.locator('.was').textContent()).toContain('The exciter winding is open')
    const own = await page.locator('[aria-labelledby=own] .order > li').allTextContents()
    expect(own.map((row) => row.split(/[: ]/)[0])).toEqual([
      'Resistance',
      'Put',
      'Resistance',
      'Put',
      'The',
    ])
    expect(own.at(-1)).toContain('bought and fitted: the complaint was gone')
    expect(await page.locator('[aria-labelledby=tool] .order > li').count()).toBeGreaterThan(2)
    await page.getByRole('link', { name: 'How it goes so far' }).click()
    await page.getByText('1 round, 1 of them right.').waitFor()
    expect(complaints).toEqual([])
  })

  it('is lost by buying on a guess, with scripts off and on a narrow screen', async () => {
    const { page } = await openPage({
      javaScriptEnabled: false,
      viewport: { width: 320, height: 640 },
    })
    await begin(page, seedHiding('exciter.open'))
    expect(await page.evaluate(wider)).toBe(0)
    await page.getByLabel('The part that has failed').selectOption('igniter')
    await page.getByRole('button', { name: 'Buy it and fit it' }).click()
    await page
      .getByText('The igniter is new, all is together again, and the complaint is still there')
      .waitFor()
    await page.getByRole('button', { name: 'I cannot tell' }).click()
    await page
      .getByText('You bought the igniter, which was good, and then could not tell.')
      .waitFor()
    expect(await page.locator('.state').textContent()).toBe('Not right')
    expect(await page.evaluate(wider)).toBe(0)
  })

  it('is begun, worked and ended from the keyboard alone', async () => {
    const { page } = await openPage()
    await page.goto('/practice?machine=pedlar-1c&complaint=no-spark&seed=7')
    await page.getByLabel('Seed').focus()
    await page.keyboard.press('Enter')
    await page.locator('.all-checks summary').first().focus()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await page.locator('#check').waitFor()
    // What is pressed on a page that is still loading can be lost.
    await page.waitForLoadState()
    await page.locator('.do-it .go').press('Enter')
    await page.locator('#last').waitFor()
    await page.waitForLoadState()
    await page.getByRole('button', { name: 'I cannot tell' }).press('Enter')
    await page.locator('.orders').waitFor()
  })

  it.each(['light', 'dark'] as const)(
    'has no finding of axe in %s colours',
    async (colorScheme) => {
      const { page } = await openPage({ colorScheme, viewport: { width: 360, height: 780 } })
      await page.goto('/practice')
      expect(await axeFindings(page)).toEqual([])
      await begin(page, '12')
      await make(page, 'Timing pickup', 'Peak voltage of the timing pickup at the igniter plug')
      await page.getByRole('button', { name: 'Show it' }).click()
      await page.locator('.suspects').waitFor()
      const round = new URL(page.url()).pathname
      await page.goto(`${round}?check=peak-voltage.pickup.igniter-plug`)
      expect(await axeFindings(page)).toEqual([])
      expect(await page.evaluate(wider)).toBe(0)
      await page.getByRole('button', { name: 'I cannot tell' }).click()
      await page.locator('.orders').waitFor()
      expect(await axeFindings(page)).toEqual([])
      await page.goto('/practice/progress')
      expect(await axeFindings(page)).toEqual([])
      expect(await page.evaluate(wider)).toBe(0)
    },
  )
})
