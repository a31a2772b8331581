import type { Page } from 'playwright-core'
import request from 'supertest'
import type { Case } from '../../server/knowledge/case.ts'
import { answerOn } from './answer-on.ts'
import type { Answer, HiddenFault } from './hidden-fault.ts'
import { openForm, usualAtTheBench } from './job.ts'

/** From the front page to the first check, as a person clicks. */
export async function openJobByClicks(page: Page, { machine, complaint }: Case): Promise<void> {
  await page.goto('/')
  const onMachine = page.getByRole('region', { name: `${machine.maker} ${machine.name}` })
  await onMachine.getByRole('heading', { name: machine.name }).click()
  await onMachine.getByRole('link', { name: complaint.title }).click()
  await page.getByRole('button', { name: 'Open the job' }).click()
  await page.locator('#check').waitFor()
}

/** As much of a case as opens a job on it. */
interface About {
  readonly machine: Pick<Case['machine'], 'id'>
  readonly complaint: Pick<Case['complaint'], 'id'>
}

/**
 * To a new job as its form opens it where nothing is changed but this, past the pages that lead there: for whoever is
 * about what comes after them.
 */
export async function toNewJob(
  page: Page,
  kase: About,
  changes: Readonly<Record<string, string>> = {},
): Promise<void> {
  const body = new URLSearchParams()
  for (const [name, value] of Object.entries({
    ...openForm(kase, usualAtTheBench()),
    ...changes,
  })) {
    for (const each of [value].flat()) body.append(name, each)
  }
  const sent = await page.request.post('/jobs', {
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    data: body.toString(),
    maxRedirects: 0,
  })
  await page.goto(sent.headers().location!)
}

/**
 * Answers the job on the page past it, over HTTP, and shows it as it is then: for whoever is about what comes after.
 *
 * @param check one of one's choice, instead of those that are proposed
 * @param most as many times, or until nothing is asked
 */
export async function answerPast(
  page: Page,
  answer: (check: string) => Answer,
  { check, most = Number.POSITIVE_INFINITY }: { check?: string; most?: number } = {},
): Promise<void> {
  const { origin, pathname } = new URL(page.url())
  const http = request.agent(origin).set('Accept-Encoding', 'identity')
  const at = check === undefined ? pathname : `${pathname}?check=${check}`
  for (let count = 0; count < most; count += 1) {
    if ((await answerOn(http, at, answer)) === null) break
  }
  await page.goto(pathname)
}

/** The check that stands on the page; null where there is a verdict and nothing is asked. */
export async function checkOnPage(page: Page): Promise<string | null> {
  const field = page.locator('#reading input[name=check]')
  return (await field.count()) === 0 ? null : field.inputValue()
}

/**
 * Answers the check on the page: types and presses Enter, or presses the answer's button. What looks
 * like a mistake is read once more, and sent as it is.
 */
export async function give(page: Page, answer: Answer): Promise<void> {
  await changing(page, async () => {
    if ('choose' in answer) {
      await page.locator(`#reading button[value="${answer.choose}"]`).click()
      return
    }
    const answered = page.waitForResponse((response) => response.request().method() === 'POST')
    await page.locator('#typed').fill(answer.type)
    await page.locator('#typed').press('Enter')
    if ((await answered).status() !== 422) return
    await page.getByText('Read it once more').waitFor()
    await page.locator('#typed').press('Enter')
  })
}

/** Does something that makes a new version of the job, and waits until the page shows it. */
export async function changing(page: Page, act: () => Promise<void>): Promise<void> {
  const version = page.locator('#job input[name=version]').first()
  const next = Number(await version.inputValue()) + 1
  await act()
  await page
    .locator(`#job input[name=version][value="${next}"]`)
    .first()
    .waitFor({ state: 'attached' })
}

/** Follows every proposal with what the hidden fault typically shows; returns how many there were. */
export async function followProposals(page: Page, fault: HiddenFault): Promise<number> {
  for (let count = 0; ; count += 1) {
    const check = await checkOnPage(page)
    if (check === null) return count
    await give(page, fault.typical(check))
  }
}

/** The sentence of the verdict. */
export async function verdictOn(page: Page): Promise<string> {
  return (await page.locator('#verdict').textContent()) ?? ''
}
