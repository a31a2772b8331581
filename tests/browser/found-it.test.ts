import { describe, expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { openTwin, wordsOf } from '../support/measuring.ts'

const phone = { viewport: { width: 360, height: 780 }, hasTouch: true }

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('what one sees with one’s own eyes, %s', (_, javaScriptEnabled) => {
  it('is chosen, repaired and proved by clicks, while a check is open', async () => {
    const { page, complaints } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    await openTwin(page)
    const firstHeading = page.locator('.work h2').first()
    const heading = async (words: string) => {
      await page.getByRole('heading', { name: words }).waitFor()
      expect(await firstHeading.textContent()).toBe(words)
      if (javaScriptEnabled) {
        expect(await page.locator('#repair:focus').count()).toBe(1)
        expect(await page.locator('#said').textContent()).toContain(`${words}. `)
      }
    }
    await page.getByRole('link', { name: 'I found it' }).click()
    await page.getByLabel('What has failed?').selectOption({ label: 'Tether switch' })
    await page.getByRole('button', { name: 'This one' }).click()
    await heading('You found it: the tether switch')
    await page.getByText('How it failed, note, price, minutes').click()
    const failures = page.getByLabel('How it failed')
    const [, failure] = await failures.locator('option').allTextContents()
    await failures.selectOption({ label: failure! })
    await page.getByLabel('Note').fill('Cord torn off at the clip')
    await page.getByRole('button', { name: 'Repaired: the tether switch' }).click()
    await heading('Prove the repair')
    await page.getByRole('button', { name: 'Proved: the complaint is gone' }).click()
    await heading('Repaired and proved')
    const done = (await wordsOf(page.locator('.repair'))).toLowerCase()
    for (const says of [
      'tether switch repaired; proved ',
      failure!,
      'cord torn off at the clip.',
    ]) {
      expect(done).toContain(says.toLowerCase())
    }
    expect(await page.locator('#reading').count()).toBe(0)
    expect(complaints).toEqual([])
  })

  it('and is none of the parts is said in words, and a field that is left empty is shown', async () => {
    const { page, complaints } = await openPage({ ...phone, javaScriptEnabled }, {}, 'folded')
    await openTwin(page)
    await page.getByRole('link', { name: 'I found it' }).click()
    const parts = page.getByLabel('What has failed?')
    await parts.selectOption({ label: 'Something that is not listed here' })
    await page.getByRole('button', { name: 'This one' }).click()
    await page
      .getByRole('heading', { name: 'You found it: something that is not listed here' })
      .waitFor()
    const cause = page.getByLabel('What was it?')
    // Of blanks the browser has nothing to say.
    await cause.fill('  ')
    await page.getByRole('button', { name: 'It was something else' }).click()
    await page.locator('#cause-problem').waitFor()
    if (javaScriptEnabled) expect(await page.locator('#cause:focus').count()).toBe(1)
    await cause.fill('A nest of mice in the exhaust')
    await page.getByRole('button', { name: 'It was something else' }).click()
    await page.getByRole('heading', { name: 'Prove the repair' }).waitFor()
    await page.getByRole('button', { name: 'Proved: the complaint is gone' }).click()
    await page.getByRole('heading', { name: 'Repaired and proved' }).waitFor()
    expect(await wordsOf(page.locator('.repair'))).toContain(
      'Something else, “A nest of mice in the exhaust”, put right; proved ',
    )
    // The refused form is all that a console may hold.
    expect(complaints.filter((each) => !each.includes('422'))).toEqual([])
  })
})

it('shows what was wrong with what was written, where it was written', async () => {
  const { page } = await openPage(phone, {}, 'folded')
  await openTwin(page)
  await page.getByRole('link', { name: 'I found it' }).click()
  await page.getByLabel('What has failed?').selectOption({ label: 'Tether switch' })
  await page.getByRole('button', { name: 'This one' }).click()
  await page.getByText('How it failed, note, price, minutes').click()
  const minutes = page.getByLabel('Minutes of work')
  await minutes.fill('half an hour')
  await page.getByRole('button', { name: 'Repaired: the tether switch' }).click()
  const problem = page.locator('#written-problem')
  await problem.waitFor()
  expect(await minutes.inputValue()).toBe('half an hour')
  for (const shown of [problem, minutes]) {
    const { y } = (await shown.boundingBox())!
    expect(y).toBeGreaterThanOrEqual(0)
    expect(y).toBeLessThan(phone.viewport.height)
  }
})
