import type { Page } from 'playwright-core'

/** Waits for a place on a page that reloads itself; with scripts off, by looking again. */
export async function lookUntil(page: Page, selector: string): Promise<void> {
  const wanted = page.locator(selector)
  const scripts = (await page.evaluate('typeof htmx').catch(() => 'undefined')) !== 'undefined'
  if (scripts) return wanted.waitFor()
  while ((await wanted.count()) === 0) await page.getByRole('link', { name: 'Look again' }).click()
}
