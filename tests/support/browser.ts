import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { inject, onTestFinished } from 'vitest'
import type { Store } from '../../server/store/open.ts'
import { readyApp } from './app.ts'
import { allRoomsCookie } from './rooms.ts'

let connected: Promise<Browser> | undefined

/** The one browser of all tests. */
export function browser(): Promise<Browser> {
  connected ??= chromium.connect(inject('browser'))
  return connected
}

/** A page of a running app, and everything that the browser complained about on it. */
export interface OpenPage {
  readonly page: Page
  readonly address: string
  readonly store: Store
  /** Errors on the console, uncaught exceptions, and what the content security policy stopped. */
  readonly complaints: readonly string[]
}

/**
 * A new window on an app of its own, closed after the test.
 *
 * @param rooms whether those beside a check stand open, or folded as a new job has them
 */
export async function openPage(
  options: BrowserContextOptions = {},
  parts: Parameters<typeof readyApp>[0] = {},
  rooms: 'open' | 'folded' = 'open',
): Promise<OpenPage> {
  const { address, store } = await readyApp(parts)
  const context = await (await browser()).newContext({ baseURL: address, ...options })
  onTestFinished(() => context.close())
  if (rooms === 'open') await context.addCookies([{ ...allRoomsCookie, url: address }])
  const page = await context.newPage()
  page.setDefaultTimeout(10_000)
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return { page, address, store, complaints }
}
