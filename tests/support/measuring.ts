import type { Locator, Page } from 'playwright-core'
import { changing, toNewJob } from './journey.ts'

/** How a job is opened here, past its form; what is left out is as the form has it. */
export interface Opening {
  readonly machine?: string
  readonly air?: string
  readonly meter?: string
  readonly complaint?: string
}

/** Opens a job on the twin of the demo. */
export function openTwin(page: Page, opening: Opening = {}): Promise<void> {
  return openMachine(page, opening)
}

export async function openMachine(page: Page, opening: Opening): Promise<void> {
  const { machine = 'larkfell-2i', complaint = 'no-spark', ...changes } = opening
  await toNewJob(page, { machine: { id: machine }, complaint: { id: complaint } }, changes)
}

/** Goes to a check of one's choice on the job that is open. */
export async function goTo(page: Page, check: string): Promise<void> {
  await page.goto(`${new URL(page.url()).pathname}?check=${check}`)
  await page.locator('#typed').waitFor()
}

/** What else the form of a reading may say. */
export interface How {
  readonly warmth?: string
  readonly celsius?: string
  readonly rpm?: string
}

/** Types into the form on the page and sends it. */
export async function send(page: Page, typed: string, how: How = {}): Promise<void> {
  if (how.warmth !== undefined) await page.locator('#warmth').selectOption(how.warmth)
  if (how.celsius !== undefined) await page.locator('input[name=celsius]').fill(how.celsius)
  if (how.rpm !== undefined) await page.locator('#rpm').fill(how.rpm)
  await page.locator('#typed').fill(typed)
  await page.locator('#typed').press('Enter')
}

/** Makes a check of one's choice, and waits until its reading is taken; returns the reading's row. */
export async function take(
  page: Page,
  check: string,
  typed: string,
  how: How = {},
): Promise<Locator> {
  await goTo(page, check)
  await changing(page, () => send(page, typed, how))
  return readingOf(page, check)
}

/** The row of a check among the readings so far. */
export function readingOf(page: Page, check: string): Locator {
  return page.locator('.readings > li').filter({
    has: page.locator(`.change input[name=check][value="${check}"]`),
  })
}

/** The words of a part of the page, as they are read, with ordinary spaces. */
export async function wordsOf(part: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is folded away is not read.
  return (await part.innerText()).replaceAll(/\s+/g, ' ')
}

/** Zeroes the leads on the page of the meter; a meter may be chosen on the way. */
export async function zeroLeads(page: Page, zero: string, meter?: string): Promise<void> {
  const inCheck = page.locator('.check').getByRole('link', { name: 'Meter and leads' })
  await inCheck.first().click()
  await page.getByRole('heading', { name: 'Meter and leads', level: 1 }).waitFor()
  await page.getByLabel('Probes held together read').fill(zero)
  if (meter !== undefined) await page.locator(`input[name=meter][value=${meter}]`).check()
  await page.getByRole('button', { name: 'Use this meter' }).click()
  await page.locator('.ticket').waitFor()
}
