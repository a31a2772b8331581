import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { overCase } from '../../server/knowledge/sheet/over-case.ts'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { shippedKnowledge, twin } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const machine = twin()
const { checks } = overCase(
  knowledge,
  machine,
  { kind: 'loose', assembly: 'stator-plate' },
  Object.keys(knowledge.tools.tools),
)

/** A plate with an open winding, one with shorted turns far beyond its limit, and one that leaks to the core. */
const faults: Readonly<Record<string, string>> = {
  'winding-resistance.exciter-run.exciter-plug': 'OL OL OL',
  'winding-resistance.injection.power-plug': '7.1 7.1 7.1',
  'winding-isolation.pump-winding.power-plug': '35k 35k 34k',
}

function shown(check: string): string {
  const fault = faults[check]
  if (fault !== undefined) return fault
  const { low = 0, high } = checks.get(check)!.measurand!.limits
  const middle = (low + (high ?? 0)) / 2
  return high === undefined ? 'OL OL OL' : `${middle} ${middle} ${middle}`
}

async function begin(page: Page, meter: string): Promise<void> {
  await page.goto(`/machines/${machine.id}`)
  await page.getByRole('link', { name: 'Check it over' }).click()
  await page.getByLabel('What').selectOption('loose:stator-plate')
  await page.getByLabel('Serial number').fill('PL-0815')
  await page.getByLabel('Meter').selectOption(meter)
  await page.getByLabel('Leads together').fill('0.2')
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.locator('#typed').waitFor()
}

/** The reading that is asked for and the job's version; empty once all is read. */
async function now(page: Page): Promise<string> {
  const fields = page.locator('#reading input[type=hidden]')
  return (await fields.evaluateAll((all) => all.map((each) => each.getAttribute('value')))).join()
}

/** Type, Enter, next: the hands never leave the keyboard. */
async function readOn(page: Page): Promise<void> {
  for (let read = 0; read < 60; read += 1) {
    const before = await now(page)
    if (before === '') return
    const check = await page.locator('#reading input[name=check]').inputValue()
    await expect.poll(() => page.evaluate('document.activeElement?.id')).toBe('typed')
    await page.keyboard.type(shown(check))
    await page.keyboard.press('Enter')
    await expect.poll(() => now(page)).not.toBe(before)
    if ((await page.locator('#problem').count()) === 0) continue
    const refused = await now(page)
    await page.keyboard.press('Enter')
    await expect.poll(() => now(page)).not.toBe(refused)
  }
  throw new Error('it asks without end')
}

const badParts = (page: Page) => page.locator('.part.bad h3').allTextContents()

describe('a loose plate is checked over', () => {
  it.each([true, false])(
    'by keyboard alone, and its three faults are found and nothing else, scripts %s',
    async (javaScriptEnabled) => {
      const { page } = await openPage({ javaScriptEnabled })
      await begin(page, 'hand')
      if (javaScriptEnabled) await readOn(page)
      else await readWithoutScripts(page)
      const bad = await badParts(page)
      expect(bad).toHaveLength(3)
      expect(bad.join()).toMatch(/Run exciter winding.*Bad: open/)
      expect(bad.join()).toMatch(/Injection winding.*Bad: low/)
      expect(bad.join()).toMatch(/Pump winding.*Bad: a path to ground/)
      expect(await page.locator('#report').isVisible()).toBe(true)
    },
  )

  it('and a pocket meter says what it cannot tell', async () => {
    const { page } = await openPage()
    await begin(page, 'pocket')
    await readOn(page)
    const bad = (await badParts(page)).join()
    expect(bad).toMatch(/Run exciter winding/)
    expect(bad).toMatch(/Pump winding/)
    const unsure = (await page.locator('.part.unsure h3').allTextContents()).join()
    expect(unsure).toMatch(/Lighting winding.*This meter/)
  })

  it('and its report is one page, sound in light and dark, at 320 pixels too', async () => {
    const { page } = await openPage({ viewport: { width: 320, height: 640 } })
    await begin(page, 'hand')
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0)
    expect(await axeFindings(page)).toEqual([])
    await readOn(page)
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0)
    expect(await axeFindings(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, 'colours')).toEqual([])
    const pdf = await page.pdf({ format: 'A4' })
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
    await page.emulateMedia({ media: 'print' })
    const onPaper = await page.locator('.report').textContent()
    expect(onPaper).toContain('PL-0815')
    expect(onPaper).toContain('Signed, date')
  })
})

it('a whole machine, filled in as a table, is one page as well', async () => {
  const small = knowledge.machines.get('haulmoor-1e')!
  const { page } = await openPage()
  await page.goto(`/machines/${small.id}/check-over`)
  await page.getByLabel('What').selectOption('machine')
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByRole('link', { name: 'As a table to fill' }).click()
  const fields = page.locator('.fill input')
  const count = await fields.count()
  expect(count).toBeGreaterThan(30)
  for (let i = 0; i < count; i += 1) await fields.nth(i).fill('OL')
  await page.getByRole('button', { name: 'Take them' }).click()
  if ((await page.locator('.fill .problem').count()) > 0) {
    // The three pairs of a winding with three legs.
    for (const field of await page.locator('.fill [aria-invalid]').all())
      await field.fill('OL OL OL')
    await page.getByRole('button', { name: 'Take them' }).click()
  }
  await page.locator('.report').waitFor()
  expect(await page.locator('.over-rows .now-read', { hasText: 'OL' }).count()).toBe(count)
  const pdf = await page.pdf({ format: 'A4' })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
})

async function readWithoutScripts(page: Page): Promise<void> {
  for (let read = 0; read < 60; read += 1) {
    if ((await page.locator('#typed').count()) === 0) return
    const check = await page.locator('#reading input[name=check]').inputValue()
    await page.locator('#typed').fill(shown(check))
    await page.locator('#typed').press('Enter')
    await page.waitForLoadState()
    if ((await page.locator('#problem').count()) > 0) {
      await page.locator('#typed').press('Enter')
      await page.waitForLoadState()
    }
  }
}
