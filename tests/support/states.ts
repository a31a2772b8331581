import type { Page } from 'playwright-core'
import { allCases } from './app.ts'
import { hiddenFault } from './hidden-fault.ts'
import { changing, checkOnPage, followProposals, give, openJobByClicks } from './journey.ts'

/** The case with the most checks: its pages hold everything that a page can hold. */
export const largest = allCases().sort((a, b) => b.checks.size - a.checks.size)[0]!

const fault = hiddenFault(largest)

/** Every page of the app, and every state a job's page can be in, by name; each brings the browser there. */
export const states: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'the front page': (page) => page.goto('/'),
  'the form that opens a job': (page) =>
    page.goto(`/jobs/new?machine=${largest.machine.id}&complaint=${largest.complaint.id}`),
  'the form that opens a job, refused': async (page) => {
    await states['the form that opens a job']!(page)
    await page.getByLabel('Air temperature').fill('warm')
    await page.getByRole('button', { name: 'Open the job' }).first().click()
    await page.getByRole('alert').waitFor()
  },
  'an empty list of jobs': (page) => page.goto('/jobs'),
  'a list of jobs': async (page) => {
    await openJobByClicks(page, largest)
    await page.goto('/jobs')
  },
  'a job just opened': (page) => openJobByClicks(page, largest),
  'a job with readings': async (page) => {
    await openJobByClicks(page, largest)
    for (let i = 0; i < 3; i += 1) await give(page, fault.typical((await checkOnPage(page))!))
  },
  'a measurement at a connector that is hard to reach': async (page) => {
    await openJobByClicks(page, largest)
    const awkward = [...largest.checks.values()].find(
      (card) => card.measured && card.spot?.awkward,
    )!
    await page.goto(`${page.url()}?check=${awkward.id}`)
  },
  'a reading that cannot be taken': async (page) => {
    await openJobByClicks(page, largest)
    const measured = [...largest.checks.values()].find((card) => card.measured)!
    await page.goto(`${page.url()}?check=${measured.id}`)
    await page.locator('#typed').fill('36 apples')
    await page.locator('#typed').press('Enter')
    await page.locator('#problem').waitFor()
  },
  'a reading being corrected': async (page) => {
    await states['a job with readings']!(page)
    await page
      .getByRole('link', { name: /^Correct/ })
      .first()
      .click()
    await page.getByText('Leave it as it was').waitFor()
  },
  'a check passed over': async (page) => {
    await openJobByClicks(page, largest)
    await page.getByText('Cannot reach it').click()
    await page.getByLabel('Another reason').fill('Seized bolt')
    await changing(page, () => page.getByRole('button', { name: 'Pass over it' }).click())
    await page.getByText('Not possible on this job').click()
  },
  'a verdict': async (page) => {
    await openJobByClicks(page, largest)
    await followProposals(page, fault)
  },
  'an address that leads nowhere': (page) => page.goto('/nowhere'),
}
