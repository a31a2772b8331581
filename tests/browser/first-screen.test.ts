import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, give, openJobByClicks } from '../support/journey.ts'
import { shippedCases } from '../support/knowledge.ts'

const screens = [
  { width: 360, height: 780 },
  { width: 1280, height: 800 },
] as const

/** At least this share of all checks has in the first screen what a person at the machine needs. */
const wanted = 0.9

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
 * Swaps the page of another check in, as the page's own script does; whole visits would take minutes. It is
 * fetched once, whatever the screen. What is looked at it on has a voice, and so a button to read aloud.
 */
const bring = (address: string) => `(async () => {
  window.fetched ??= {}
  fetched['${address}'] ??= await fetch('${address}', { headers: { 'HX-Request-Type': 'partial' } })
    .then((answer) => answer.text())
  document.getElementById('job').outerHTML = fetched['${address}']
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
  const { page } = await openPage({ hasTouch: true }, {}, 'folded')
  const lacking = new Map(screens.map((screen) => [screen, [] as string[]]))
  for (const { kase, cards } of cases.filter(({ cards }) => cards.length > 0)) {
    const { job, made } = await openedWithReading(page, kase)
    await haveCautionsRead(page, job, kase, made)
    for (const [screen, lacks] of lacking) {
      await page.setViewportSize(screen)
      for (const card of cards) {
        const lacked = (await page.evaluate(
          `${bring(`${job}?check=${card.id}`)}.then(() => ${outOfSight(wantedOf(card))})`,
        )) as string[]
        if (lacked.length > 0) lacks.push(`${kase.machine.id} ${card.id}: ${lacked}`)
      }
    }
  }
  const count = cases.reduce((sum, { cards }) => sum + cards.length, 0)
  expect(count).toBeGreaterThan(300)
  for (const [{ width, height }, lacks] of lacking) {
    const says = `${width} × ${height}:\n${lacks.join('\n')}`
    expect.soft(lacks.length / count, says).toBeLessThanOrEqual(1 - wanted)
  }
}, 480_000)

const wantedOf = ({ measurand }: CheckCard) => (measurand ? [...always, ...aim] : always)

/** A job with one reading, so that what it meant stands above the next check. */
async function openedWithReading(page: Page, kase: Case): Promise<{ job: string; made: string }> {
  await openJobByClicks(page, kase)
  const { pathname } = new URL(page.url())
  const made = (await checkOnPage(page))!
  await give(page, hiddenFault(kase).typical(made))
  return { job: pathname, made }
}

/** Skips checks until each caution was in front of the person once; those of the check that was made were. */
async function haveCautionsRead(
  page: Page,
  job: string,
  { checks }: Case,
  made: string,
): Promise<void> {
  const read = new Set(checks.get(made)!.cautions.map(({ id }) => id))
  let version = 2
  for (const { id: check, cautions } of checks.values()) {
    if (cautions.every((caution) => read.has(caution.id))) continue
    for (const caution of cautions) read.add(caution.id)
    const form = JSON.stringify({ version, check, reason: 'only looked at' })
    // What comes after it need not be worked out.
    const sent = `{ method: 'POST', body: new URLSearchParams(${form}), redirect: 'manual' }`
    expect(await page.evaluate(`fetch('${job}/skips', ${sent}).then(({ type }) => type)`)).toBe(
      'opaqueredirect',
    )
    version += 1
  }
}
