import request from 'supertest'
import { expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { answerOn } from '../support/answer-on.ts'
import type { Http } from '../support/app.ts'
import { openPage } from '../support/browser.ts'
import { faultOf } from '../support/hidden-fault.ts'
import { openJob, post, usualAtTheBench } from '../support/job.ts'
import { shippedCases } from '../support/knowledge.ts'

const screens = [
  { width: 360, height: 780 },
  { width: 1280, height: 800 },
]

/** At least this share of all checks has in the first screen what a person at the machine needs. */
const atLeast = 0.9

/**
 * Which of these are not wholly in sight: not cut off by the edge of the screen, and not under the bar that
 * stays at its foot.
 */
const outOfSight = (selectors: readonly string[]) => `(() => {
  const bar = document.querySelector('.check > .answer').getBoundingClientRect()
  const seen = (it) => {
    const { top, bottom, left, right } = it.getBoundingClientRect()
    const foot = it.closest('.answer') ? innerHeight : bar.top
    return top >= 0 && bottom <= foot + 1 && left >= 0 && right <= innerWidth + 1
  }
  return ${JSON.stringify(selectors)}.filter((selector) =>
    [...document.querySelectorAll(selector)].some((it) => it.checkVisibility() && !seen(it)))
})()`

/**
 * Swaps the page of another check in, as the page's own script does; whole visits would take minutes. What it is
 * looked at on has a voice, and so a button to read aloud.
 */
const bring = (html: string) => `(() => {
  document.getElementById('job').outerHTML = ${JSON.stringify(html)}
  document.documentElement.classList.add('can-read')
  document.getElementById('job').scrollIntoView()
})()`

const always = [
  '.last',
  '#check',
  '.check .hazard',
  '#typed',
  '.answer .go',
  '.answer .key',
  '.answers button',
]
/** Of a measured check, once its cautions are known. */
const aim = ['.limits', '.connector-face']

/** Checks of one kind at faces of one size look alike on every machine and with every complaint. */
const likeness = ({ id, spot }: CheckCard) =>
  `${id.split('.')[0]} ${spot?.connector?.card.face.rows.map(({ length }) => length)}`

// A tree of one fault names nothing by a first reading.
const walked = shippedCases().filter(({ model }) => model.cutSets.length > 2)

/** Of those that look alike the one with the longest title, which needs most room, and a case that has it. */
const roomiest = new Map<string, { kase: Case; card: CheckCard }>()
for (const kase of walked) {
  for (const card of kase.checks.values()) {
    const known = roomiest.get(likeness(card))
    if (known === undefined || known.card.title.length < card.title.length) {
      roomiest.set(likeness(card), { kase, card })
    }
  }
}

const cases = walked.map((kase) => ({
  kase,
  cards: [...roomiest.values()].filter((each) => each.kase === kase).map(({ card }) => card),
}))

it('the first screen of a check holds all that matters, without scrolling, for nine in ten', async () => {
  const { page, address } = await openPage({ hasTouch: true }, {}, 'folded')
  const http = request.agent(address).set('Accept-Encoding', 'identity')
  const shown: { name: string; html: string; wanted: readonly string[] }[] = []
  for (const { kase, cards } of cases.filter(({ cards }) => cards.length > 0)) {
    const { job, made } = await openedWithReading(http, kase)
    await haveCautionsRead(http, job, kase, made)
    // The page into which the others are swapped.
    if (shown.length === 0) await page.goto(job)
    for (const card of cards) {
      const got = http.get(`${job}?check=${card.id}`).set('HX-Request-Type', 'partial')
      // A check that the job has come to by itself is at the job's own address.
      const { text: html } = await got.redirects(1).expect(200)
      shown.push({ name: `${kase.machine.id} ${card.id}`, html, wanted: wantedOf(card) })
    }
  }
  expect(shown.length).toBeGreaterThan(300)
  for (const screen of screens) {
    await page.setViewportSize(screen)
    const lacks: string[] = []
    for (const { name, html, wanted } of shown) {
      const lacked = await page.evaluate<string[]>(`${bring(html)}, ${outOfSight(wanted)}`)
      if (lacked.length > 0) lacks.push(`${name}: ${lacked}`)
    }
    const says = `${screen.width} × ${screen.height}:\n${lacks.join('\n')}`
    expect.soft(lacks.length / shown.length, says).toBeLessThanOrEqual(1 - atLeast)
  }
}, 480_000)

const wantedOf = ({ measurand }: CheckCard) => (measurand ? [...always, ...aim] : always)

/** A job with one reading, so that what it meant stands above the next check. */
async function openedWithReading(http: Http, kase: Case): Promise<{ job: string; made: string }> {
  const job = await openJob(http, kase, usualAtTheBench())
  const single = kase.model.cutSets.findIndex(({ faults }) => faults.length === 1)
  return { job, made: (await answerOn(http, job, faultOf(kase, single).typical))! }
}

/** Skips checks until each caution was in front of the person once; those of the check that was made were. */
async function haveCautionsRead(
  http: Http,
  job: string,
  { checks }: Case,
  made: string,
): Promise<void> {
  const read = new Set(checks.get(made)!.cautions.map(({ id }) => id))
  let version = 2
  for (const { id: check, cautions } of checks.values()) {
    if (cautions.every((caution) => read.has(caution.id))) continue
    for (const caution of cautions) read.add(caution.id)
    await post(http, `${job}/skips`, { version, check, reason: 'only looked at' }).expect(303)
    version += 1
  }
}
