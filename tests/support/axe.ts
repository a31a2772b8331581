import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Results {
  readonly passes: readonly { id: string }[]
  readonly violations: readonly { id: string; help: string; nodes: readonly { html: string }[] }[]
}

/**
 * What axe finds wrong on the page as it is now, one line a place.
 *
 * @param rules all of them, or those about colours: in other colours the rest comes out the same
 * @throws Error if axe found no words to look at: then it has not seen the page.
 */
export async function axeFindings(page: Page, rules: 'all' | 'colours' = 'all'): Promise<string[]> {
  await page.evaluate(source)
  const options = { resultTypes: ['violations'], ...(rules === 'colours' && colourRules) }
  const run = `axe.run(document, ${JSON.stringify(options)})`
  const { passes, violations } = await page.evaluate<Results>(run)
  if (!passes.some(({ id }) => id === 'color-contrast')) throw new Error('axe has not seen a page')
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html }) => `${id}: ${help}: ${html}`),
  )
}

const colourRules = { runOnly: ['cat.color'] }
