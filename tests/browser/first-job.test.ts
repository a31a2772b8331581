import { describe, expect, it } from 'vitest'
import { allCases } from '../support/app.ts'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import {
  changing,
  checkOnPage,
  followProposals,
  give,
  openJobByClicks,
  toNewJob,
  verdictOn,
} from '../support/journey.ts'
import { everyKindOfForm, kindsOfForm } from '../support/kinds-of-form.ts'

// Every case is walked without a browser, by `tests/http` and `tests/knowledge`.
const cases = everyKindOfForm(allCases()).map(
  (kase) => [`${kase.complaint.title}, ${kase.machine.name}`, kase] as const,
)

it('every kind of form is filled in', () => {
  const filledIn = new Set(cases.flatMap(([, kase]) => [...hiddenFault(kase).forms]))
  expect([...filledIn]).toEqual(expect.arrayContaining(kindsOfForm))
  expect(cases.length).toBeLessThanOrEqual(8)
})

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('a job %s', (_, javaScriptEnabled) => {
  it.each(cases)('is walked to the part that failed: %s', async (_, kase) => {
    const fault = hiddenFault(kase)
    const { page, complaints } = await openPage({ javaScriptEnabled })
    await openJobByClicks(page, kase)

    // The first reading goes wrong, is noticed one check later, and is put right.
    const first = (await checkOnPage(page))!
    await give(page, fault.mistaken(first))
    const next = await checkOnPage(page)
    if (next !== null) await give(page, fault.typical(next))
    await page
      .locator('.readings')
      .getByRole('link', { name: /^Correct/ })
      .first()
      .click()
    await page.getByText('Correct this reading', { exact: true }).waitFor()
    expect(await checkOnPage(page)).toBe(first)
    await give(page, fault.typical(first))

    await followProposals(page, fault)
    expect(await verdictOn(page)).toContain(`The fault is in the ${fault.part}`)
    expect(complaints).toEqual([])
  })

  it('goes on where a reading is withdrawn or a check skipped', async () => {
    const [, kase] = cases[0]!
    const fault = hiddenFault(kase)
    const { page, complaints } = await openPage({ javaScriptEnabled })
    await toNewJob(page, kase)
    const first = (await checkOnPage(page))!
    await give(page, fault.typical(first))
    await page.locator('.change summary').click()
    await changing(page, () => page.getByRole('button', { name: /^It counts no more/ }).click())
    expect(await checkOnPage(page)).toBe(first)
    await page.locator('.pass > summary').click()
    const because = page.locator('.pass button[name=reason]').first()
    const reason = await because.textContent()
    await changing(page, () => because.click())
    expect(await checkOnPage(page)).not.toBe(first)
    expect(await page.locator('.for-others').textContent()).toContain(`${reason}.`)
    expect(complaints).toEqual([])
  })

  it('takes another check than the proposed one, and goes back to its own address after it', async () => {
    const [, kase] = cases[0]!
    const fault = hiddenFault(kase)
    const { page } = await openPage({ javaScriptEnabled })
    await toNewJob(page, kase)
    const job = page.url()
    const other = page.locator('.for-others .checks b').first()
    const title = await other.textContent()
    await other.click()
    await page.getByRole('link', { name: 'Back to the proposed check' }).waitFor()
    expect(await page.locator('#check').textContent()).toBe(title)
    expect(new URL(page.url()).search).toMatch(/^\?check=/)
    await give(page, fault.typical((await checkOnPage(page))!))
    expect(page.url().replace(/#job$/, '')).toBe(job)
  })
})
