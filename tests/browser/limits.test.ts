import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../server/knowledge/sheet/sheet.ts'
import { openPage } from '../support/browser.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const machines = [...knowledge.machines.values()]
const twin = knowledge.machines.get('larkfell-2i')!
const phone = { viewport: { width: 360, height: 780 } }

/** How many sheets of A4 the page takes. */
async function sheets(page: Page): Promise<number> {
  const pdf = await page.pdf({ preferCSSPageSize: true, format: 'A4' })
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
}

describe('limits at hand', () => {
  it.each([true, false])(
    'are two presses from the front page, and a judged reading three and what was typed, scripts %s',
    async (javaScriptEnabled) => {
      const { page } = await openPage({ ...phone, javaScriptEnabled })
      await page.goto('/')
      await page.locator('.machine summary', { hasText: twin.name }).click()
      await page.locator('.machine [open] .limits-way a', { hasText: 'Limits' }).click()
      const row = page.locator('.limit-rows a').first()
      await row.waitFor()
      expect(await row.locator('.good').textContent()).toMatch(/\d/)

      await row.click()
      const field = page.locator('#typed')
      await field.fill('OL')
      await field.press('Enter')
      await page.locator('.result .word').waitFor()
      expect(await page.locator('.result .word').textContent()).toContain('open')
      const top = (await page.locator('.result').boundingBox())!.y
      expect(top).toBeGreaterThanOrEqual(0)
      expect(top).toBeLessThan(phone.viewport.height / 2)
    },
  )

  it('are filtered while one types, by part, plug or quantity, and found again by the address', async () => {
    const { page } = await openPage(phone)
    await page.goto(`/machines/${twin.id}`)
    const rows = page.locator('.limit-rows a')
    const all = await rows.count()
    expect(all).toBe(sheetFor(knowledge, twin).readings.size)
    await page.locator('#find').pressSequentially('pump winding')
    await expect.poll(() => rows.count()).toBeLessThan(all / 4)
    expect(await rows.first().textContent()).toContain('Pump winding')
    await expect.poll(() => page.url()).toContain('find=pump')
    await page.reload()
    expect(await rows.count()).toBeLessThan(all / 4)
  })

  it.each(machines.map((machine) => [machine.name, machine] as const))(
    'of the %s hang over the bench on one page, on two for a large machine',
    async (_, machine) => {
      const { page } = await openPage()
      await page.goto(`/machines/${machine.id}`)
      const large = Object.keys(machine.connectors).length > 10
      expect(await sheets(page)).toBeLessThanOrEqual(large ? 2 : 1)
      await page.emulateMedia({ media: 'print' })
      const connectors = Object.keys(machine.connectors).length
      expect(await page.locator('.connector-face:visible').count()).toBe(connectors)
      expect(await page.locator(':is(button, input, select, .screen):visible').count()).toBe(0)
    },
  )
})
