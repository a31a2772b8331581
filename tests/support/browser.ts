import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { onTestFinished } from 'vitest'
import type { Room } from '../../server/jobs/standing/rooms.ts'
import type { Store } from '../../server/store/open.ts'
import { readyApp } from './app.ts'
import { launched } from './chromium.ts'
import { type Door, openDoor } from './door.ts'
import { allRoomsCookie, roomsCookie } from './rooms.ts'

/** A page of a running app, and everything that the browser complained about on it. */
export interface OpenPage {
  readonly page: Page
  readonly address: string
  readonly store: Store
  /** Errors on the console, uncaught exceptions, and what the content security policy stopped. */
  readonly complaints: readonly string[]
}

type Parts = Parameters<typeof readyApp>[0]
type Rooms = 'open' | 'folded' | readonly Room[]

/**
 * A window on an app of its own, as good as new: of cookies, storage, routes and what stood in it nothing is left from
 * the test before. A new one takes as much work as four pages.
 *
 * @param rooms which of those beside a check stand open; folded as a new job has them, or all of them
 */
export async function openPage(
  options: BrowserContextOptions = {},
  parts: Parts = {},
  rooms: Rooms = 'open',
): Promise<OpenPage> {
  const { app, store } = await readyApp(parts)
  door ??= openDoor()
  const { address, leadTo } = await door
  const close = leadTo(app)
  const { viewport = usual, colorScheme = 'light', ...lasting } = options
  const name = JSON.stringify(lasting)
  const page = windows.get(name) ?? (await newPage({ baseURL: address, ...lasting }))
  windows.delete(name)
  onTestFinished(async () => {
    await leftEmpty(page, `${address}/static/icon.svg`)
    windows.set(name, page)
    close()
  })
  if (viewport !== null) await page.setViewportSize(viewport)
  await page.emulateMedia({ media: null, colorScheme })
  return { page, address, store, complaints: await entered(page, address, rooms) }
}

/** The same in a window that nobody has used before, and nobody will: for what can not be taken back in one. */
export async function openNewPage(
  options: BrowserContextOptions = {},
  parts: Parts = {},
  rooms: Rooms = 'open',
): Promise<OpenPage> {
  const { address, store } = await readyApp(parts)
  const page = await newPage({ baseURL: address, ...options })
  onTestFinished(() => page.context().close())
  return { page, address, store, complaints: await entered(page, address, rooms) }
}

let browser: Promise<Browser> | undefined
let door: Promise<Door> | undefined

/** Windows that wait for the next test, by what of them stays as it is. */
const windows = new Map<string, Page>()

/** As the browser's driver has it. */
const usual = { width: 1280, height: 720 }

async function newPage(options: BrowserContextOptions): Promise<Page> {
  // It ends with the process.
  browser ??= launched()
  const context: BrowserContext = await (await browser).newContext(options)
  const page = await context.newPage()
  page.setDefaultTimeout(10_000)
  return page
}

/** Gives it the cookie of whoever has the rooms open, and hears what it complains of from now on. */
async function entered(page: Page, address: string, rooms: Rooms): Promise<string[]> {
  if (rooms !== 'folded') {
    const cookie = rooms === 'open' ? allRoomsCookie : roomsCookie(rooms)
    await page.context().addCookies([{ ...cookie, url: address }])
  }
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return complaints
}

/** Leaves nothing of a test behind, and nothing that goes on by itself. */
async function leftEmpty(page: Page, nothing: string): Promise<void> {
  page.removeAllListeners()
  await page.unrouteAll({ behavior: 'ignoreErrors' })
  await page.goto(nothing)
  await page.evaluate('sessionStorage.clear(); localStorage.clear()')
  await page.mouse.move(0, 0)
  await page.context().clearCookies()
}
