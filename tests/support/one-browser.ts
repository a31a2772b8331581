import type { TestProject } from 'vitest/node'
import { launchedServer } from './chromium.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser listens. */
    browser: string
  }
}

/** One browser for all tests that want one, closed after the last. */
export default async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  const server = await launchedServer()
  provide('browser', server.wsEndpoint())
  return () => server.close()
}
