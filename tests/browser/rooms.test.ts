import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { rooms } from '../../server/jobs/standing/rooms.ts'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, give, toNewJob } from '../support/journey.ts'
import { goTo, openTwin } from '../support/measuring.ts'
import { largest } from '../support/states.ts'

const phone = { viewport: { width: 360, height: 780 }, hasTouch: true }

/** The rooms that are there, and those of them that stand open. */
const roomsOn = async (page: Page, which: '' | '[aria-expanded=true]' = '') =>
  (await page
    .locator(`.room > h2 > a${which}`)
    .evaluateAll((all) => all.map(({ id }) => id.replace('fold-', '')))) as string[]
const openOn = (page: Page) => roomsOn(page, '[aria-expanded=true]')

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('a room on a phone, %s', (_, javaScriptEnabled) => {
  it('is folded, opens by one press for as long as its job lasts, and not on another', async () => {
    const { page, complaints } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    await toNewJob(page, largest)
    expect(await roomsOn(page)).toEqual(rooms.filter((room) => room !== 'stands'))
    expect(await openOn(page)).toEqual([])
    expect(await page.locator('.suspects').count()).toBe(0)

    await page.getByRole('link', { name: 'Suspects' }).click()
    await page.locator('.suspects').waitFor()
    await give(page, hiddenFault(largest).typical((await checkOnPage(page))!))
    expect(await openOn(page)).toEqual(['suspects'])
    expect(await page.locator('.suspects').isVisible()).toBe(true)

    await toNewJob(page, largest)
    expect(await openOn(page)).toEqual([])
    await page.goto('/jobs/1')
    expect(await openOn(page)).toEqual(['suspects'])
    await page.getByRole('link', { name: 'Suspects' }).click()
    await page.locator('.suspects').waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
  })
})

it('a room that opens leaves what is typed in the field, and the focus on its head', async () => {
  const { page } = await openPage(phone, {}, 'folded')
  await openTwin(page)
  await goTo(page, 'winding-resistance.exciter-start.igniter-plug')
  await page.locator('#typed').fill('36')
  await page.getByRole('link', { name: 'Fault tree' }).click()
  await page.locator('#room-tree .drawn').waitFor()
  expect(await page.locator('#typed').inputValue()).toBe('36')
  expect(await page.locator('#fold-tree:focus').count()).toBe(1)
  // What is typed is sent for the check that it was read at.
  await page.locator('#typed').fill('365')
  await page.locator('#typed').press('Enter')
  await page.locator('.last', { hasText: '365' }).waitFor()
  expect(await openOn(page)).toEqual(['tree'])
})
