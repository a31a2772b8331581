import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, followProposals, give, toNewJob } from '../support/journey.ts'
import { wordsOf } from '../support/measuring.ts'
import { largest } from '../support/states.ts'

/** How many sheets of A4 the page takes, with the margins that it asks for. */
async function sheets(page: Page, scale = 1): Promise<number> {
  const pdf = await page.pdf({ format: 'A4', scale })
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
}

/** A sheet to measure by, with everything on it that can stand there: the one with most to heed. */
const measured = [...largest.checks.values()]
  .filter(({ measurand, spot }) => measurand && spot?.connector && spot.awkward)
  .sort((a, b) => b.cautions.length - a.cautions.length)[0]!

it('a sheet just begun is one page to work by: cautions, where to touch, steps, lines to write on', async () => {
  const { page } = await openPage()
  await toNewJob(page, largest)
  expect(await sheets(page)).toBe(1)
  await page.goto(`${page.url()}?check=${measured.id}`)
  expect(await sheets(page)).toBe(1)
  expect(await sheets(page, 2)).toBeGreaterThan(1)

  await page.emulateMedia({ media: 'print' })
  const onPaper = await wordsOf(page.locator('.work'))
  expect(measured.cautions.length).toBeGreaterThan(2)
  for (const { command, says } of measured.cautions) {
    expect(onPaper).toContain(command)
    expect(onPaper).toContain(says)
  }
  expect(await page.locator('.connector-face').isVisible()).toBe(true)
  expect(await page.locator('.probes li:visible').count()).toBe(2)
  expect(await page.locator('.steps li:visible').count()).toBeGreaterThan(3)
  expect(await page.locator('.blank:visible').allTextContents()).toEqual([
    'Read or answered',
    'Noted besides',
    'Signed, date',
  ])
  expect(await page.locator(':is(button, input, select, .beside):visible').count()).toBe(0)
})

it('a job is one page in the middle, and no more than two with its verdict, repaired and proved', async () => {
  const fault = hiddenFault(largest)
  const { page } = await openPage()
  await toNewJob(page, largest)
  for (let made = 0; made < 3; made += 1) {
    await give(page, fault.typical((await checkOnPage(page))!))
  }
  expect(await sheets(page)).toBe(1)
  await followProposals(page, fault)
  await page.locator('#verdict').waitFor()
  expect(await sheets(page)).toBeLessThanOrEqual(2)
  await page.getByRole('button', { name: /^Repaired: / }).click()
  await page.getByRole('button', { name: /^Proved: / }).click()
  await page.getByRole('heading', { name: 'Repaired and proved' }).waitFor()
  expect(await sheets(page)).toBeLessThanOrEqual(2)
  await page.emulateMedia({ media: 'print' })
  const readings = await page.locator('.on-paper > ol > li:visible').count()
  expect(readings).toBeGreaterThan(3)
})
