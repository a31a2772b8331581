import { renameSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { emptyFolder } from '../support/folder.ts'
import { toNewJob } from '../support/journey.ts'
import { largest } from '../support/states.ts'

const typed = 'Nobody <b> knows'

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('what could not be recorded, %s', (_, javaScriptEnabled) => {
  it('stands on the page with one button, which sends it again', async () => {
    const data = emptyFolder()
    const { page, complaints } = await openPage({ javaScriptEnabled }, { data })
    await toNewJob(page, largest)
    const file = join(data, 'coilhound.sqlite')
    renameSync(file, `${file}.away`)
    await page.locator('.pass > summary').click()
    await page.locator('#reason').fill(typed)
    await page.locator('#reason').press('Enter')
    await page.getByRole('heading', { name: 'Not recorded yet' }).waitFor()
    expect(await page.getByRole('definition').allTextContents()).toEqual([typed])
    if (javaScriptEnabled) expect(await axeFindings(page)).toEqual([])

    renameSync(`${file}.away`, file)
    await page.getByRole('button', { name: 'Send it again' }).click()
    await page.locator('#job').waitFor()
    expect(await page.locator('.for-others').textContent()).toContain(typed)
    // A browser reports every answer of 500 and above by itself.
    expect(complaints.filter((complaint) => !complaint.includes('503'))).toEqual([])
  })
})

it('what is longer than any form stays in its field, below the sentence that says so, where a script sent it', async () => {
  const manual = `The owner says ${'it knocks, '.repeat(110_000)}`
  const { page } = await openPage()
  await toNewJob(page, largest)
  await page.locator('.pass > summary').click()
  await page.locator('#reason').fill(manual)
  await page.locator('#reason').press('Enter')
  await page.getByText('Make it shorter, and send it again.').waitFor()
  const left = await page.locator('#reason').inputValue()
  expect(left === manual).toBe(true)
  await page.locator('#reason').fill(typed)
  await page.locator('#reason').press('Enter')
  await page.locator('.for-others', { hasText: typed }).waitFor()
  expect(await page.getByText('Make it shorter').count()).toBe(0)
})
