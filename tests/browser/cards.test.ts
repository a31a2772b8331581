import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { complaintsFor } from '../../server/knowledge/fits.ts'
import { shippedKnowledge } from '../support/app.ts'
import { openNewPage, openPage } from '../support/browser.ts'
import { emptyFolder } from '../support/folder.ts'

const ids = (machine: string) => complaintsFor(shippedKnowledge(), machine).map(({ id }) => id)

async function sheets(page: Page, format: string): Promise<number> {
  const pdf = await page.pdf({ format })
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
}

it('a card is opened answer by answer to an ending, without a script', async () => {
  const { page, complaints } = await openPage({
    javaScriptEnabled: false,
    viewport: { width: 360, height: 780 },
  })
  await page.goto('/machines/larkfell-2i/cards')
  await page.getByRole('link', { name: 'No spark at all: what rides along' }).click()
  await page.getByRole('heading', { name: 'No spark at all' }).waitFor()
  await page.getByRole('heading', { name: 'Getting home' }).waitFor()
  let opened = 0
  while ((await page.locator('.folds .ending:visible').count()) === 0) {
    expect(await page.locator('.folds .step:visible').count()).toBe(opened + 1)
    const deepest = page.locator('.folds .step:visible').last()
    await deepest.locator(':scope > details > summary').first().click()
    opened += 1
  }
  expect(opened).toBeGreaterThan(1)
  const ending = page.locator('.folds .ending:visible')
  expect(await ending.textContent()).toMatch(/%/)
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(360)
  // Its own style was let in.
  const colour = `getComputedStyle(document.querySelector('.danger .signal')).color`
  expect(await page.evaluate(colour)).toBe('rgb(255, 255, 255)')
  expect(complaints).toEqual([])
})

it.each(['larkfell-2i', 'clipwell-1m'])(
  'every card of the %s is two sheets at most, with all of it to be read',
  { timeout: 180_000 },
  async (machine) => {
    const { page } = await openPage({ javaScriptEnabled: false })
    const tools = ['along', 'bench']
    expect(ids(machine).length).toBeGreaterThan(3)
    for (const [i, complaint] of ids(machine).entries()) {
      const href = `/machines/${machine}/cards/${complaint}?tools=${tools[i % 2]}`
      await page.goto(href)
      for (const format of ['A4', 'Letter']) {
        expect(await sheets(page, format), `${href} on ${format}`).toBeLessThanOrEqual(2)
      }
      await page.emulateMedia({ media: 'print' })
      expect(await page.locator('.folds').isVisible()).toBe(false)
      const letters = page.locator('.folds .ending h3 .n')
      const all = await letters.allTextContents()
      const onPaper = page.locator('.paper .ending > .n:visible')
      expect(await onPaper.allTextContents()).toEqual(all)
      expect(all.length).toBeGreaterThan(0)
      await page.emulateMedia({ media: null })
    }
  },
)

it('a card works when it is saved and opened from a disk', async () => {
  const { page } = await openNewPage({ javaScriptEnabled: false })
  const answer = await page.request.get('/machines/clipwell-1m/cards/no-spark?tools=bare')
  const file = join(emptyFolder(), 'card.html')
  writeFileSync(file, await answer.text())
  await page.context().setOffline(true)
  await page.goto(`file://${file}`)
  const first = page.locator('.folds > .step > details').first()
  await first.locator('summary').first().click()
  await first.locator(':is(.step, .ending)').first().waitFor()
  const ground = 'getComputedStyle(document.documentElement).backgroundColor'
  expect(await page.evaluate(ground)).toBe('rgb(251, 252, 248)')
})
