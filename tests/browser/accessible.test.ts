import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { states } from '../support/states.ts'

describe.each(['light', 'dark'] as const)('in %s colours axe finds nothing on', (colorScheme) => {
  it.each(Object.entries(states))('%s', async (_, bring) => {
    const { page } = await openPage({ colorScheme })
    await bring(page)
    expect(await axeFindings(page)).toEqual([])
  })
})

it('finds what is wrong, when something is', async () => {
  const { page } = await openPage()
  await page.goto('/')
  await page.evaluate('document.querySelector("h1").insertAdjacentHTML("afterend", "<img src=x>")')
  expect(await axeFindings(page)).toEqual([expect.stringContaining('image-alt')])
})
