// The pictures of the README, made again with: npm run pictures
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { buildApp } from '../../server/app.ts'
import { openStore } from '../../server/store/open.ts'
import { staticFolder } from '../../server/web/folders.ts'
import { shippedKnowledge } from '../support/app.ts'
import { launched } from '../support/chromium.ts'
import { goTo, openTwin, take } from '../support/measuring.ts'

/** Just wide enough for what stands beside the work; more would be small print on a page. */
const width = 1040
/** As high as makes the point, and the file no larger than a picture in a README should be. */
const height = { check: 750, verdict: 620 }

const folder = join(staticFolder, 'pictures')
mkdirSync(folder, { recursive: true })
const data = mkdtempSync(join(tmpdir(), 'coilhound-'))
const store = await openStore(data)
const app = buildApp({ knowledge: shippedKnowledge(), store })
const baseURL = await app.listen({ host: '127.0.0.1', port: 0 })
const browser = await launched()
try {
  await pictures(browser)
} finally {
  await browser.close()
  await app.close()
  await store.close()
  rmSync(data, { recursive: true })
}

/** One job on the twin: a winding that is open, from the check that shows it to the verdict. */
async function pictures(from: Browser): Promise<void> {
  const page = await from.newPage({ baseURL, colorScheme: 'light' })
  await page.context().addCookies([{ name: 'rooms', value: 'suspects', url: baseURL }])
  await openTwin(page)
  await take(page, 'stop-line.wires-stop.stop-plug', 'OL OL')
  await goTo(page, 'winding-resistance.exciter-start.igniter-plug')
  await picture(page, 'check')
  await take(page, 'winding-resistance.exciter-start.igniter-plug', 'OL OL OL')
  await take(page, 'winding-resistance.exciter-start.exciter-plug', 'OL OL OL')
  await page.locator('#verdict').waitFor()
  await picture(page, 'verdict')
}

async function picture(page: Page, name: keyof typeof height): Promise<void> {
  const path = join(folder, `${name}.png`)
  await page.setViewportSize({ width, height: height[name] })
  await page.evaluate('scrollTo(0, 0)')
  await page.screenshot({ path })
  console.log(path)
}
