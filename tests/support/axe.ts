import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Results {
  readonly passes: readonly unknown[]
  readonly violations: readonly { id: string; help: string; nodes: readonly { html: string }[] }[]
}

/**
 * What axe finds wrong on the page as it is now, one line a place.
 *
 * @throws Error if axe found hardly anything to look at: then it has not seen the page.
 */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(source)
  const results = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] })',
  )) as Results
  if (results.passes.length < 10) throw new Error('axe has not seen a page')
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html }) => `${id}: ${help}: ${html}`),
  )
}
