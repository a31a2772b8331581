// Pictures of every page for people to look at: npx tsx tests/browser/shots.ts [folder]
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { buildApp } from '../../server/app.ts'
import { openStore } from '../../server/store/open.ts'
import { allCases, shippedKnowledge } from '../support/app.ts'
import { launched } from '../support/chromium.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, followProposals, give, openJobByClicks } from '../support/journey.ts'
import { openTwin, take } from '../support/measuring.ts'

const looks = [
  { name: '1280-light', width: 1280, colorScheme: 'light', media: 'screen' },
  { name: '360-light', width: 360, colorScheme: 'light', media: 'screen' },
  { name: '1280-dark', width: 1280, colorScheme: 'dark', media: 'screen' },
  { name: '360-dark', width: 360, colorScheme: 'dark', media: 'screen' },
  { name: 'print', width: 760, colorScheme: 'light', media: 'print' },
] as const

const unfold = `for (const each of document.querySelectorAll('.readings details')) each.open = true`

const folder = process.argv[2] ?? join(tmpdir(), 'coilhound-shots')
mkdirSync(folder, { recursive: true })
const data = mkdtempSync(join(tmpdir(), 'coilhound-'))
const store = await openStore(data)
const app = buildApp({ knowledge: shippedKnowledge(), store, freshViews: true })
const address = await app.listen({ host: '127.0.0.1', port: 0 })
const browser = await launched()
try {
  const pages = await addresses(browser)
  for (const [name, path] of Object.entries(pages)) await picture(browser, name, path)
  console.log(`${Object.keys(pages).length} pages in ${looks.length} looks: ${folder}`)
} finally {
  await browser.close()
  await app.close()
  await store.close()
  rmSync(data, { recursive: true })
}

/** Makes jobs in every state by clicking, and says where they are. */
async function addresses(from: Browser): Promise<Record<string, string>> {
  const page = await from.newPage({ baseURL: address })
  const found: Record<string, string> = { front: '/', list: '/jobs', nothing: '/nowhere' }
  const kase = allCases().find(
    ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'larkfell-2i',
  )!
  found.new = `/jobs/new?machine=${kase.machine.id}&complaint=${kase.complaint.id}`
  found.machine = `/?machine=${kase.machine.id}`
  found['list-found'] = '/jobs?find=spark&state=open'
  const fault = hiddenFault(kase)
  await openJobByClicks(page, kase)
  found.begun = path(page)
  await openJobByClicks(page, kase)
  for (let i = 0; i < 3; i += 1) await give(page, fault.typical((await checkOnPage(page))!))
  const middle = path(page)
  found.middle = middle
  const measurand = [...kase.checks.values()].filter(
    (card) => card.measurand && card.spot?.connector,
  )
  found.measured = `${middle}?check=${measurand.find((card) => card.spot!.touch.includes('ground'))!.id}`
  found.awkward = `${middle}?check=${measurand.find((card) => card.spot!.awkward)!.id}`
  await page
    .getByRole('link', { name: /^Correct/ })
    .first()
    .click()
  await page.getByText('Leave it as it was').waitFor()
  found.correcting = path(page)
  const look = [...kase.checks.values()].find(
    ({ id, measurand }) =>
      measurand === undefined && kase.model.checks.some((c) => c.id === id && c.slips),
  )!
  await page.goto(`${middle}?check=${look.id}`)
  if ((await checkOnPage(page)) === look.id) await give(page, fault.typical(look.id))
  found.again = `${middle}?take=${look.id}`
  await openJobByClicks(page, kase)
  await followProposals(page, fault)
  found.verdict = path(page)
  await openTwin(page, { air: '-25' })
  await take(page, 'winding-resistance.pickup-right.igniter-plug', '181.9 181.9')
  await take(page, 'winding-resistance.pickup-left.igniter-plug', '185.6 191 185.7')
  await take(page, 'primary-resistance.coil-left.coil-plug-left', '0.8')
  await take(page, 'peak-voltage.exciter-start.igniter-plug', '120 131 128')
  await take(page, 'winding-resistance.exciter-start.igniter-plug', 'OL')
  found.worth = path(page)
  found.unfit = `${found.worth}?check=primary-resistance.coil-right.coil-plug-right`
  found.meter = `${found.worth}/meter`
  found['health-case'] = `/health/${kase.machine.id}/dies-hot`
  await page.goto(found['health-case'])
  await page.locator('#never-pay').waitFor()
  found.health = '/health'
  // Every case has to be worked out before the page is whole.
  await page.goto(found.health)
  await page.locator('#kinds').waitFor({ timeout: 300_000 })
  await page.close()
  return found
}

function path(page: Page): string {
  return page.url().slice(address.length)
}

async function picture(from: Browser, name: string, at: string): Promise<void> {
  for (const { name: look, width, colorScheme, media } of looks) {
    const page = await from.newPage({
      baseURL: address,
      viewport: { width, height: 800 },
      colorScheme,
    })
    await page.emulateMedia({ media })
    await page.goto(at)
    if (name === 'worth') await page.evaluate(unfold)
    await page.screenshot({ path: join(folder, `${name}-${look}.png`), fullPage: true })
    await page.close()
  }
}
