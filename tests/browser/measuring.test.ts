import type { BrowserContextOptions } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { openPage as openWith } from '../support/browser.ts'
import { changing } from '../support/journey.ts'
import {
  goTo,
  openMachine,
  openTwin,
  readingOf,
  send,
  take,
  wordsOf,
  zeroLeads,
} from '../support/measuring.ts'
import { plain } from '../support/plain.ts'

/** A reading and what is worked out of it stand in one of the rooms; what is in the others makes no difference to them. */
const openPage = (options: BrowserContextOptions = {}) => openWith(options, {}, ['readings'])

const exciter = 'winding-resistance.exciter-start.igniter-plug'
const pickup = 'winding-resistance.pickup-left.igniter-plug'
const otherPickup = 'winding-resistance.pickup-right.igniter-plug'
const awkwardPickup = 'winding-resistance.pickup-left.pickup-plug'
const primary = 'primary-resistance.coil-left.coil-plug-left'
const peak = 'peak-voltage.exciter-start.igniter-plug'

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('the meter, %s', (_, javaScriptEnabled) => {
  it('is chosen by its class, and its leads are zeroed once', async () => {
    const { page, complaints } = await openPage({ javaScriptEnabled })
    await openTwin(page)
    await goTo(page, primary)
    expect(await wordsOf(page.locator('.terms'))).toContain('leads not zeroed')
    expect(await wordsOf(page.locator('.prompt'))).toContain('hold the probes together')
    await zeroLeads(page, '0.21', 'shop')
    await page.locator('.head > summary').click()
    const head = await wordsOf(page.locator('.head'))
    expect(head).toContain('Shop meter, 0.01 Ω digit, leads zeroed at 0.21 Ω')
    const row = await take(page, primary, '0.66 0.67')
    expect(await wordsOf(row)).toContain('The leads have 0.21 Ω: without them 0.45 Ω.')
    expect(complaints).toEqual([])
  })

  it('may be one’s own, by its ranges, and what is wrong in them is said beside them', async () => {
    const { page, complaints } = await openPage({ javaScriptEnabled })
    await openTwin(page)
    await page.locator('.head > summary').click()
    await page.getByRole('link', { name: 'Meter and leads' }).first().click()
    await page.locator('input[name=meter][value=own]').check()
    const own = page.locator('.own')
    if (!(await own.getAttribute('open'))) await page.getByText('Ranges of my own meter').click()
    await page.getByLabel('What it is called').fill('Grandfather’s bridge')
    const range = page.getByRole('group', { name: 'Range 1', exact: true })
    await range.getByLabel('Up to').fill('600 Ω')
    await range.getByLabel('Last digit').fill('900 Ω')
    await range.getByLabel('% of reading').fill('0.5')
    await range.getByLabel('+ counts').fill('2')
    await page.getByRole('button', { name: 'Use this meter' }).click()
    expect(await wordsOf(page.locator('.own'))).toContain('the last digit must be smaller')
    expect(await range.getByLabel('Up to').inputValue()).toBe('600 Ω')
    await range.getByLabel('Last digit').fill('0.1 Ω')
    await page.getByRole('button', { name: 'Use this meter' }).click()
    await page.locator('.ticket').waitFor()
    await page.locator('.head > summary').click()
    expect(await wordsOf(page.locator('.head'))).toContain('Grandfather’s bridge')
    const row = await take(page, pickup, '225 225')
    // 0.5 % of 225 and 2 counts of 0.1: the meter just entered, and no other.
    await row.getByText('How sure is that?').click()
    expect(await wordsOf(row)).toContain('0.5 % of 225 Ω + 2 × 0.1 Ω')
    // It has no range of volts, so checks that need one are not proposed.
    expect(complaints.filter((each) => !each.includes('422'))).toEqual([])
  })
})

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('several touches, %s', (_, javaScriptEnabled) => {
  it('come down to the lowest, typed in a row or one at a time', async () => {
    const { page, complaints } = await openPage({ javaScriptEnabled })
    await openTwin(page)
    const row = await take(page, exciter, '571 365.2')
    expect(await wordsOf(row)).toContain('lowest of 2 touches: 571 Ω, 365.2 Ω')
    expect(await wordsOf(row)).toContain('The touches scatter more than the meter can explain')
    await row.getByLabel('Touch again').fill('365.1 365.2')
    await changing(page, () => row.getByRole('button', { name: 'Touch again' }).click())
    expect(await wordsOf(row)).toContain('lowest of 4 touches')
    expect(await wordsOf(row)).toMatch(/ Good /)
    expect(complaints).toEqual([])
  })

  it('are asked for again beside the reading where they cannot be read', async () => {
    const { page } = await openPage({ javaScriptEnabled })
    await openTwin(page)
    const row = await take(page, exciter, '365')
    await row.getByLabel('Touch again').fill('about right')
    await row.getByRole('button', { name: 'Touch again' }).click()
    await row.getByRole('alert').waitFor()
    expect(await row.getByLabel('Touch again').inputValue()).toBe('about right')
    expect(await wordsOf(row)).toContain('365 Ω')
    expect(await page.locator('#problem').count()).toBe(0)
  })
})

it('one OL at a connector that is hard to reach does not condemn a part', async () => {
  const { page } = await openPage()
  await openTwin(page)
  const row = await take(page, awkwardPickup, 'OL')
  expect(await wordsOf(row)).toContain('Not sure: perhaps')
  expect(await wordsOf(row)).toContain(
    'Clean both places, press the probes on bare metal, and touch again.',
  )
  expect(await page.locator('#verdict').count()).toBe(0)
  await row.getByLabel('Touch again').fill('OL OL OL OL')
  await changing(page, () => row.getByRole('button', { name: 'Touch again' }).click())
  expect(await wordsOf(row)).toContain('Bad: ')
})

it('a correction has its field in sight at once on a phone', async () => {
  const { page } = await openPage({ viewport: { width: 360, height: 780 } })
  await openTwin(page)
  const row = await take(page, pickup, '185.6 185.6 185.6')
  await row.getByRole('link', { name: 'Correct' }).click()
  await page.locator('.corrects').waitFor()
  const field = (await page.locator('#typed').boundingBox())!
  expect(field.y).toBeGreaterThan(0)
  expect(field.y + field.height).toBeLessThan(780)
  // What else was said of it is put right beside it.
  const warmth = (await page.locator('#warmth').boundingBox())!
  expect(warmth.y - field.y).toBeLessThan(400)
})

describe('how warm the part is', () => {
  it('is taken from the air unless told, and a cold winding is not condemned for it', async () => {
    const { page } = await openPage()
    await openTwin(page, { air: '-25' })
    const row = await take(page, pickup, '185.6 185.6 185.6', { warmth: 'cold-soaked' })
    const words = await wordsOf(row)
    expect(words).toContain('185.6 Ω')
    expect(words).toMatch(/At −25 °C copper reads 18 % low: 185\.3 Ω now is 225\.1 Ω at 20 °C\./)
    expect(words).toMatch(/ Good /)
  })

  it('may be measured, and a hot winding is not condemned for it either', async () => {
    const { page } = await openPage()
    await openTwin(page)
    const row = await take(page, pickup, '313.3 313.3', { warmth: 'measured', celsius: '120' })
    const words = await wordsOf(row)
    expect(words).toMatch(/At 120 °C copper reads 39 % high: 313 Ω now is 224\.7 Ω at 20 °C\./)
    expect(words).toMatch(/ Good /)
    await row.getByRole('link', { name: 'Correct' }).click()
    await page.getByText('Correct this reading', { exact: true }).waitFor()
    expect(await page.locator('#warmth').inputValue()).toBe('measured')
    expect(await page.locator('input[name=celsius]').inputValue()).toBe('120')
  })

  it('is kept where the reading beside it cannot be taken', async () => {
    const { page } = await openPage()
    await openTwin(page)
    await goTo(page, pickup)
    await send(page, 'no idea', { warmth: 'measured', celsius: '−12' })
    await page.locator('#problem').waitFor()
    expect(await page.locator('#warmth').inputValue()).toBe('measured')
    expect(await page.locator('input[name=celsius]').inputValue()).toBe('−12')
  })

  it('is not asked of a suppressor cap, which is no copper', async () => {
    const { page } = await openPage()
    await openTwin(page, { air: '-25' })
    await goTo(page, 'cap-resistance.cap-left')
    expect(await page.locator('#warmth').count()).toBe(0)
    const row = await take(page, 'cap-resistance.cap-left', '5k 5k')
    expect(await wordsOf(row)).not.toContain('copper')
    await goTo(page, pickup)
    expect(await page.locator('#warmth').count()).toBe(1)
  })
})

it('limits, reading and corrected reading stand on one scale, with the chance and the budget', async () => {
  const { page } = await openPage()
  await openTwin(page, { air: '-5' })
  const row = await take(page, pickup, '203.2 203.5')
  const scale = row.locator('svg.limits-scale')
  expect(await scale.isVisible()).toBe(true)
  const labels = plain(await scale.locator('text').allTextContents()).join('; ')
  expect(labels).toContain('as read 203.2')
  expect(labels).toMatch(/225 Ω ± .+ Ω at 20 °C/)
  expect(labels).toContain('limits 190 Ω to 260 Ω')
  const desc = plain(await scale.locator('desc').textContent())
  expect(desc).toContain('As read: 203.2 Ω. Corrected, with 95 % of its uncertainty: 225 Ω ±')
  expect(await wordsOf(row)).toMatch(/ Good /)
  const budget = row.locator('.budget')
  expect(await budget.locator('table').isVisible()).toBe(false)
  await budget.locator('summary').click()
  const rows = (await budget.locator('tbody th').allTextContents()).join('; ')
  for (const what of ['Accuracy of the meter', 'Leads', 'Temperature of the part', 'Touches']) {
    expect(rows).toContain(what)
  }
})

describe('a meter that cannot judge', () => {
  it('says so, and names ways that can', async () => {
    const { page } = await openPage()
    await openTwin(page, { complaint: 'dead-lights' })
    await goTo(page, 'winding-resistance.lighting.regulator-plug')
    const unfit = await wordsOf(page.locator('.unfit'))
    expect(unfit).toContain('can only tell open from not open here')
    for (const way of ['Zero the leads', 'four wires', 'known current', 'output voltage']) {
      expect(unfit).toContain(way)
    }
    const row = await take(page, 'winding-resistance.lighting.regulator-plug', '0.5')
    expect(await wordsOf(row)).toMatch(/Not sure: perhaps .*, \d+ %/)
  })

  it('is not said to be unfit where it is fit', async () => {
    const { page } = await openPage()
    await openTwin(page)
    await goTo(page, exciter)
    expect(await page.locator('.unfit').count()).toBe(0)
  })
})

describe('a peak voltage', () => {
  it('is compared at the speed of its limit where the speed was read', async () => {
    const { page } = await openPage()
    await openTwin(page)
    const row = await take(page, peak, '96 99 97', { rpm: '300' })
    const words = await wordsOf(row)
    expect(words).toMatch(/mean of the best 3 of 3 pulls/)
    expect(words).toMatch(/At 300 rpm it gave .+ V; at 400 rpm that is .+ V\./)
    expect(words).toMatch(/ Good /)
  })

  it('is known worse where nobody read the speed', async () => {
    const { page } = await openPage()
    await openTwin(page)
    const row = await take(page, peak, '120')
    const words = await wordsOf(row)
    expect(words).toContain('Speed not known: anything from 300 to 800 rpm')
    expect(words).toContain('Not sure: perhaps')
  })

  it('below what a passive adaptor can judge weighs nothing, and that is said', async () => {
    const { page } = await openPage()
    // The pickups of the twin give enough; those of the single do not.
    await openMachine(page, { machine: 'pedlar-1c' })
    await goTo(page, 'peak-voltage.pickup.igniter-plug')
    expect(await wordsOf(page.locator('.unfit'))).toContain('adaptor')
    const row = await take(page, 'peak-voltage.pickup.igniter-plug', '2.4')
    expect(await wordsOf(row)).toContain('cannot judge below 5 V')
    expect(await wordsOf(row)).toContain('Not sure: perhaps')
  })
})

describe('what readings say together', () => {
  it('is worked out without being asked: lead and cap, and a winding beside its twin', async () => {
    const { page } = await openPage()
    await openTwin(page)
    expect(await page.locator('.together').count()).toBe(0)
    await take(page, 'through-cap-resistance.coil-left', '14.2k')
    await take(page, 'secondary-resistance.coil-left', '9.1k')
    await take(page, pickup, '225 225')
    await take(page, otherPickup, '220.7 220.7')
    const together = await wordsOf(page.locator('.together'))
    expect(together).toMatch(
      /14\.2 kΩ at .+ minus 9\.1 kΩ at .+ leaves 5\.1 kΩ ± .+ for the left plug lead and the left plug cap\./,
    )
    expect(together).toMatch(
      /The left timing pickup and the right timing pickup read .*alike: 1\.02 to 1/,
    )
  })

  it('of line to line and line to ground bounds where a winding leaks', async () => {
    const { page } = await openPage()
    await openTwin(page)
    await take(page, pickup, '225 225')
    await take(page, 'winding-isolation.pickup-left.igniter-plug', '90 90')
    const together = await wordsOf(page.locator('.together'))
    expect(together).toContain('225 Ω from line to line, 90 Ω from one line to ground')
    expect(together).toContain('within the first 40 % of the winding')
  })
})

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('a reading that tells more of how it was taken, %s', (_, javaScriptEnabled) => {
  it.each([
    ['a wrong range', exciter, '0.365', 'a thousand times off, and 365 Ω would fit'],
    ['wrong pins', exciter, '225', 'count the pins again'],
    ['a harness left plugged', pickup, '110', 'side by side: make sure the harness is unplugged'],
  ])('is asked for once more, and then taken: %s', async (_, check, typed, says) => {
    const { page } = await openPage({ javaScriptEnabled })
    await openTwin(page)
    await goTo(page, check)
    await send(page, typed)
    await page.locator('#problem').waitFor()
    expect(await wordsOf(page.locator('#problem'))).toContain(says)
    expect(await page.locator('#typed').inputValue()).toBe(typed)
    expect(await readingOf(page, check).count()).toBe(0)
    await changing(page, () => page.locator('#typed').press('Enter'))
    expect(await readingOf(page, check).count()).toBe(1)
  })
})

it('limits from a manual that names no temperature are taken as 20 ± 5 °C, and that is said', async () => {
  const { page } = await openPage()
  await openTwin(page)
  await goTo(page, exciter)
  expect(await wordsOf(page.locator('.check .terms'))).toContain(
    'The sheet names no temperature: taken as 20 ± 5 °C.',
  )
  await goTo(page, 'warmed-resistance.exciter-start.exciter-plug')
  expect(await wordsOf(page.locator('.check .terms'))).toContain('Limits hold at 80 °C.')
})
