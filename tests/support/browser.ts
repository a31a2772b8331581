import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, onTestFinished } from 'vitest'
import type { Store } from '../../server/store/open.ts'
import { readyApp } from './app.ts'
import { launched } from './chromium.ts'

let running: Promise<Browser> | undefined

/** One browser for all tests of a file. */
export function browser(): Promise<Browser> {
  running ??= launched()
  return running
}

afterAll(async () => {
  if (running !== undefined) await (await running).close()
  running = undefined
})

/** A page of a running app, and everything that the browser complained about on it. */
export interface OpenPage {
  readonly page: Page
  readonly address: string
  readonly store: Store
  /** Errors on the console, uncaught exceptions, and what the content security policy stopped. */
  readonly complaints: readonly string[]
}

/** A new window on an app of its own, closed after the test. */
export async function openPage(
  options: BrowserContextOptions = {},
  parts: Parameters<typeof readyApp>[0] = {},
): Promise<OpenPage> {
  const { app, store } = await readyApp(parts)
  const address = await app.listen({ host: '127.0.0.1', port: 0 })
  const context = await (await browser()).newContext({ baseURL: address, ...options })
  onTestFinished(() => context.close())
  const page = await context.newPage()
  page.setDefaultTimeout(10_000)
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return { page, address, store, complaints }
}
