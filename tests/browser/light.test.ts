import { expect, it } from 'vitest'
import { openNewPage } from '../support/browser.ts'
import { largest } from '../support/states.ts'

it('a first visit takes less than 60 kB over the wire, scripts and style included', async () => {
  const { page, complaints } = await openNewPage()
  const session = await page.context().newCDPSession(page)
  await session.send('Network.enable')
  const sizes: number[] = []
  session.on('Network.loadingFinished', ({ encodedDataLength }) => sizes.push(encodedDataLength))
  const form = `/jobs/new?machine=${largest.machine.id}&complaint=${largest.complaint.id}`
  await page.goto(form, { waitUntil: 'networkidle' })
  await page.getByRole('button', { name: 'Open the job' }).click()
  await page.waitForLoadState('networkidle')
  const bytes = sizes.reduce((sum, size) => sum + size, 0)
  // Two pages, one of them the heaviest there is, the style sheet, htmx, our own script, the icon.
  expect(sizes.length).toBeGreaterThanOrEqual(5)
  expect(bytes).toBeGreaterThan(15_000)
  expect(bytes).toBeLessThan(60_000)
  expect(complaints).toEqual([])
})
