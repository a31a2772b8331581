import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, followProposals, give, toNewJob } from '../support/journey.ts'
import { wordsOf } from '../support/measuring.ts'
import { largest } from '../support/states.ts'

/** How many sheets of paper the page takes, by format. */
async function sheets(page: Page): Promise<Record<string, number>> {
  const count = async (format: string) => {
    const pdf = await page.pdf({ format })
    return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
  }
  return { A4: await count('A4'), Letter: await count('Letter') }
}

/** Makes more checks than anybody needs, so that the sheet is long. */
async function makeMore(page: Page, job: string, count: number): Promise<void> {
  const fault = hiddenFault(largest)
  let made = 0
  for (const id of largest.checks.keys()) {
    if (made === count) return
    await page.goto(`${job}?check=${id}`)
    if ((await checkOnPage(page)) !== id) continue
    await give(page, fault.typical(id))
    made += 1
  }
  throw new Error(`this case has fewer than ${count} checks to make`)
}

it('a job sheet is one page at first, and no more than two of A4 and of letter for a long job', async () => {
  const { page } = await openPage()
  await toNewJob(page, largest)
  const job = new URL(page.url()).pathname
  await page.getByRole('link', { name: 'Job sheet' }).click()
  await page.getByRole('heading', { name: 'Job sheet No. 0001' }).waitFor()
  expect(await sheets(page)).toEqual({ A4: 1, Letter: 1 })

  await page.goto(job)
  await followProposals(page, hiddenFault(largest))
  await makeMore(page, job, 12)
  await page.goto(job)
  await page.locator('.written > summary').click()
  await page.getByLabel('Price').fill('€ 84.50')
  await page.getByRole('button', { name: /^Repaired: / }).click()
  await page.getByLabel('What was read meanwhile').fill('new winding 365 Ω, 148 V peak')
  await page.getByRole('button', { name: /^Proved: / }).click()
  await page.getByRole('heading', { name: 'Repaired and proved' }).waitFor()
  await page.goto(`${job}/sheet`)
  await page.getByText('Serial number, hours, customer, technician').click()
  for (const label of ['Serial number', 'Hours or distance run', 'Customer', 'Technician']) {
    await page
      .getByLabel(label, { exact: true })
      .fill(`${label} as long as eighty characters allow`)
  }
  await page.getByRole('button', { name: 'Put it on the sheet' }).click()
  await page.locator('.particulars').waitFor()
  expect(await page.locator('.read-out tbody tr').count()).toBeGreaterThanOrEqual(18)
  expect(await sheets(page)).toEqual({ A4: 2, Letter: 2 })

  await page.emulateMedia({ media: 'print' })
  const onPaper = await wordsOf(page.locator('.job-sheet'))
  for (const words of [
    'Finished: repaired and proved.',
    '€ 84.50',
    '148 V peak',
    'Technician as long',
    'Readings',
  ]) {
    expect(onPaper).toContain(words)
  }
  expect(await page.locator(':is(button, input, select, a.way):visible').count()).toBe(0)
})
