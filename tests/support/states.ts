import type { Page } from 'playwright-core'
import type { Room } from '../../server/jobs/standing/rooms.ts'
import { sheetFor } from '../../server/knowledge/sheet/sheet.ts'
import { hiddenFault } from './hidden-fault.ts'
import { answerPast, changing, toNewJob } from './journey.ts'
import { shippedCases, shippedKnowledge } from './knowledge.ts'
import { lookUntil } from './look-until.ts'
import { goTo, openTwin, readingOf } from './measuring.ts'
import { plainJpeg } from './pictures.ts'
import { roomsCookie } from './rooms.ts'

/** The case with the most checks: its pages hold everything that a page can hold. */
export const largest = shippedCases().sort((a, b) => b.checks.size - a.checks.size)[0]!

const fault = hiddenFault(largest)

const [sheetReading] = [...sheetFor(shippedKnowledge(), largest.machine).readings.values()].filter(
  ({ card }) => card.measurand.material === 'copper' && card.spot.connector,
)
const aReading = `/machines/${largest.machine.id}/readings/${sheetReading!.card.id}`

/** A case that is quickly worked out, and leaves groups with what one has at the trailside. */
const atTheTrailside = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'lamps-dim' && machine.outputs.length > 1,
)!

/** On the twin: the engine cannot breathe. */
const outside = [
  ['ask-how-it-bogs', 'fades'],
  ['air-and-exhaust', 'blocked'],
] as const

/** A reading that is taken past the page. */
const typePast = (page: Page, check: string, typed: string) =>
  answerPast(page, () => ({ type: typed }), { check, most: 1 })

/**
 * Only these rooms stand open: those that hold what a state is about. All of them are open in the states in which there
 * is something else in them: just opened, with readings, at a verdict, found, repaired and proved.
 */
const haveOpen = (page: Page, ...open: Room[]) =>
  page.context().addCookies([{ ...roomsCookie(open), ...everywhere }])
const everywhere = { domain: '127.0.0.1', path: '/' }

/** To a job's page with a measurement at a connector that is hard to reach. */
export async function toHardToReach(page: Page): Promise<void> {
  await toNewJob(page, largest)
  const awkward = [...largest.checks.values()].find((card) => card.measurand && card.spot?.awkward)!
  await page.goto(`${page.url()}?check=${awkward.id}`)
}

/** Every page of the app, and every state a job's page can be in, by name; each brings the browser there. */
export const states: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'the front page': (page) => page.goto('/'),
  'the form that opens a job': (page) =>
    page.goto(`/jobs/new?machine=${largest.machine.id}&complaint=${largest.complaint.id}`),
  'the form that opens a job, refused': async (page) => {
    await states['the form that opens a job']!(page)
    await page.getByLabel('Air temperature').fill('warm')
    await page.getByRole('button', { name: 'Open the job' }).click()
    await page.getByRole('alert').waitFor()
  },
  'the limits of a machine': (page) => page.goto(`/machines/${largest.machine.id}?air=14F`),
  'limits of a part, looked for, and the air not understood': (page) =>
    page.goto(`/machines/${largest.machine.id}?find=pump&air=mild`),
  'one reading of a sheet': (page) => page.goto(aReading),
  'one reading of a sheet, judged bad': (page) => page.goto(`${aReading}?judge=yes&typed=OL+OL`),
  'one reading of a sheet, refused': (page) => page.goto(`${aReading}?judge=yes&typed=apples`),
  'a job that begins with a reading': async (page) => {
    await page.goto(`${aReading}?judge=yes&typed=OL`)
    await page.locator('.opens > summary').click()
    await page.locator('.opens a').first().click()
    await page.locator('.begins').waitFor()
  },
  'the form that begins a check-over': (page) =>
    page.goto(`/machines/${largest.machine.id}/check-over`),
  'a check-over with its first readings': async (page) => {
    await states['the form that begins a check-over']!(page)
    await page.getByRole('button', { name: 'Begin' }).click()
    await page.locator('#typed').fill('OL OL')
    await page.locator('#typed').press('Enter')
    await page.locator('.over-rows .figure', { hasText: 'OL' }).waitFor()
  },
  'the table of a check-over, refused': async (page) => {
    await states['the form that begins a check-over']!(page)
    await page.getByRole('button', { name: 'Begin' }).click()
    await page.getByRole('link', { name: 'As a table to fill' }).click()
    await page.locator('.fill input').first().fill('apples')
    await page.getByRole('button', { name: 'Take them' }).click()
    await page.getByRole('alert').first().waitFor()
  },
  'an empty list of jobs': (page) => page.goto('/jobs'),
  'a list of jobs': async (page) => {
    await toNewJob(page, largest)
    await page.goto('/jobs')
  },
  'a job just opened': (page) => toNewJob(page, largest),
  'a job with readings': async (page) => {
    await toNewJob(page, largest)
    await answerPast(page, fault.typical, { most: 3 })
  },
  'a measurement at a connector that is hard to reach': async (page) => {
    await haveOpen(page, 'why', 'answers')
    await toHardToReach(page)
  },
  'a reading that cannot be taken': async (page) => {
    await haveOpen(page, 'why', 'answers')
    await toNewJob(page, largest)
    const measurand = [...largest.checks.values()].find((card) => card.measurand)!
    await page.goto(`${page.url()}?check=${measurand.id}`)
    await page.locator('#typed').fill('36 apples')
    await page.locator('#typed').press('Enter')
    await page.locator('#problem').waitFor()
  },
  'a check taken once more': async (page) => {
    await haveOpen(page, 'readings')
    await toNewJob(page, largest)
    const look = [...largest.checks.values()].find(
      ({ id, measurand }) =>
        measurand === undefined && largest.model.checks.some((c) => c.id === id && c.slips),
    )!
    const job = page.url()
    await answerPast(page, fault.typical, { check: look.id, most: 1 })
    await page.goto(`${job}?take=${look.id}`)
    await page.getByText('One more take, to be sure').waitFor()
  },
  'a reading being corrected': async (page) => {
    await haveOpen(page, 'readings')
    await states['a job with readings']!(page)
    await page
      .getByRole('link', { name: /^Correct/ })
      .first()
      .click()
    await page.getByText('Leave it as it was').waitFor()
  },
  'the page of the meter': async (page) => {
    await openTwin(page)
    await page.goto(`${page.url()}/meter`)
    await page.getByText('Ranges of my own meter').click()
  },
  'the page of the meter, refused': async (page) => {
    await states['the page of the meter']!(page)
    await page.getByLabel('My own meter').check()
    await page.getByLabel('Probes held together read').fill('a lot')
    await page.getByRole('button', { name: 'Use this meter' }).click()
    await page.getByRole('alert').first().waitFor()
  },
  'a meter that cannot judge': async (page) => {
    await haveOpen(page, 'why', 'answers', 'others')
    await openTwin(page, { complaint: 'dead-lights' })
    await goTo(page, 'winding-resistance.lighting.regulator-plug')
  },
  'readings with all that is worked out of them': async (page) => {
    await haveOpen(page, 'readings')
    await openTwin(page, { air: '-25' })
    await typePast(page, 'winding-resistance.pickup-left.igniter-plug', '185.6 191 185.7')
    await typePast(page, 'winding-resistance.pickup-right.igniter-plug', '181.9 181.9')
    await typePast(page, 'peak-voltage.exciter-start.igniter-plug', '120 131 128')
    await typePast(page, 'primary-resistance.coil-left.coil-plug-left', '0.8 OL')
    await page.evaluate(
      'for (const it of document.querySelectorAll(".worth details")) it.open = true',
    )
  },
  'a check before which much is put back': async (page) => {
    await haveOpen(page, 'stands')
    await openTwin(page)
    await typePast(page, 'winding-resistance.exciter-start.exciter-plug', '365')
    await page.goto(`${new URL(page.url()).pathname}?check=spark-on-tester.left`)
    await page.getByText('Put back first').waitFor()
  },
  'touches that cannot be taken': async (page) => {
    await haveOpen(page, 'readings')
    await openTwin(page)
    const check = 'winding-resistance.exciter-start.igniter-plug'
    await typePast(page, check, '365')
    const row = readingOf(page, check)
    await row.getByLabel('Touch again').fill('about right')
    await row.getByRole('button', { name: 'Touch again' }).click()
    await row.getByRole('alert').waitFor()
  },
  'a check skipped': async (page) => {
    await haveOpen(page, 'others')
    await toNewJob(page, largest)
    await page.locator('.pass > summary').click()
    await page.getByLabel('Another reason').fill('Seized bolt')
    await changing(page, () => page.getByRole('button', { name: 'Skip it' }).click())
    await page.evaluate(
      'for (const it of document.querySelectorAll(".for-others details")) it.open = true',
    )
  },
  'a verdict': async (page) => {
    await toNewJob(page, largest)
    await answerPast(page, fault.typical)
  },
  'a part that one found': async (page) => {
    await openTwin(page)
    await page.getByLabel('What has failed?').selectOption({ label: 'Tether switch' })
    await page.getByRole('button', { name: 'This one' }).click()
    await page.getByText('How it failed, note, price, minutes').click()
  },
  'none of the causes listed, and what it was left out': async (page) => {
    await haveOpen(page, 'found')
    await openTwin(page, { complaint: 'bogs-limited' })
    for (const [check, choose] of outside) {
      await answerPast(page, () => ({ choose }), { check, most: 1 })
    }
    await page.locator('#verdict', { hasText: 'None of the causes listed' }).waitFor()
    await page.getByLabel('What was it?').fill(' ')
    await page.getByRole('button', { name: 'It was something else' }).click()
    await page.getByRole('alert').first().waitFor()
  },
  'a repair to be proved': async (page) => {
    await states['a part that one found']!(page)
    await page.getByRole('button', { name: /^Repaired: / }).click()
    await page.getByRole('button', { name: /^Proved: / }).waitFor()
  },
  'a repair that is proved': async (page) => {
    await states['a repair to be proved']!(page)
    await page.getByRole('button', { name: /^Proved: / }).click()
    await page.getByText('Repaired and proved', { exact: true }).waitFor()
  },
  'a job sheet': async (page) => {
    await openTwin(page, { air: '-25' })
    const job = new URL(page.url()).pathname
    await typePast(page, 'winding-resistance.pickup-left.igniter-plug', '185.6 191 185.7')
    await typePast(page, 'winding-resistance.exciter-start.exciter-plug', 'OL OL')
    await page.goto(`${job}/sheet`)
  },
  'a check that can be read aloud': async (page) => {
    await haveOpen(page)
    await openTwin(page)
    await page.evaluate('document.documentElement.classList.add("can-read")')
    await page.getByRole('button', { name: 'Read aloud' }).waitFor()
  },
  'the photos of a job, one of them refused': async (page) => {
    await openTwin(page)
    await page.goto(`${new URL(page.url()).pathname}/photos`)
    for (const buffer of [plainJpeg, Buffer.from('words')]) {
      const file = { name: 'plug.jpg', mimeType: 'image/jpeg', buffer }
      await page.getByLabel('Picture', { exact: true }).setInputFiles(file)
      await page.getByRole('button', { name: 'Add it' }).click()
      await page.getByRole('img', { name: /^Photo 1/ }).waitFor()
    }
    await page.getByRole('alert').waitFor()
  },
  'a job with its rooms folded': async (page) => {
    await page.context().clearCookies()
    await openTwin(page)
  },
  'knowledge health, with some of it still being worked out': async (page) => {
    await states['knowledge health of one case']!(page)
    await page.goto('/health')
    await page.locator('#working').waitFor()
    await page.getByText('Being worked out', { exact: true }).first().waitFor()
    await page.locator('.health td[data-label]').first().waitFor()
  },
  'knowledge health of one case': async (page) => {
    const { machine, complaint } = atTheTrailside
    await page.goto(`/health/${machine.id}/${complaint.id}`)
    await lookUntil(page, '#never-pay')
  },
  'an address that leads nowhere': (page) => page.goto('/nowhere'),
}
