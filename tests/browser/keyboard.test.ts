import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, followProposals, give, toNewJob } from '../support/journey.ts'
import { largest, states, toHardToReach } from '../support/states.ts'

const fault = hiddenFault(largest)

const focused = (page: Page) =>
  page.evaluate(`(() => {
    const it = document.activeElement
    const shown = it.closest('.field') ?? it
    // What stays at the foot of the screen lies over what has the focus behind it.
    const bar = document.querySelector('.check > .answer')
    const isBehind = bar && !bar.contains(it) && getComputedStyle(bar).position === 'sticky'
    const { top, bottom } = it.getBoundingClientRect()
    return {
      id: it.id,
      leadsTo: it.getAttribute('href') ?? '',
      says: (it.textContent || it.value).trim(),
      outline: getComputedStyle(shown).outlineStyle,
      visible: it.checkVisibility(),
      covered: Boolean(isBehind && top < innerHeight && bottom > bar.getBoundingClientRect().top + 1
        && top < bar.getBoundingClientRect().bottom),
    }
  })()`) as Promise<At & { outline: string; visible: boolean; covered: boolean }>

interface At {
  readonly id: string
  readonly says: string
  /** Address of a link. */
  readonly leadsTo: string
}

/** Presses Tab until something that fits has the focus, and sees that each stop on the way shows it. */
async function tabTo(page: Page, fits: (at: At) => boolean) {
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('Tab')
    const at = await focused(page)
    expect(at.visible, `“${at.says}” has the focus and cannot be seen`).toBe(true)
    expect(at.covered, `“${at.says}” has the focus under the bar`).toBe(false)
    expect(at.outline, `“${at.says}” does not show its focus`).not.toBe('none')
    if (fits(at)) return
  }
  throw new Error('Tab does not lead there')
}

const ending = (words: string) => (at: { says: string }) => at.says.endsWith(words)

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('with the keyboard alone, %s', (_, javaScriptEnabled) => {
  it('one opens a job and gives the first answers', async () => {
    const { page } = await openPage({ javaScriptEnabled })
    await page.goto('/')
    const { machine, complaint } = largest
    await tabTo(page, ({ says }) => says.startsWith(`${machine.maker} ${machine.name}`))
    await page.keyboard.press('Enter')
    await tabTo(page, ({ leadsTo }) => leadsTo.includes(`${machine.id}&complaint=${complaint.id}`))
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/jobs\/new/)
    await tabTo(page, ending('Open the job'))
    await page.keyboard.press('Enter')
    await page.locator('#check').waitFor()

    const made = new Set<string>()
    for (let version = 2; version <= 4; version += 1) {
      const check = (await checkOnPage(page))!
      made.add(check)
      const answer = fault.typical(check)
      if ('type' in answer) {
        await tabTo(page, (at) => at.id === 'typed')
        await page.keyboard.type(answer.type)
      } else {
        const says = largest.checks
          .get(check)!
          .answers!.find(({ id }) => id === answer.choose)!.says
        await tabTo(page, ending(says))
      }
      await page.keyboard.press('Enter')
      await page
        .locator(`#job input[name=version][value="${version}"]`)
        .first()
        .waitFor({ state: 'attached' })
    }
    // A check made once more adds to its reading.
    expect(await page.locator('.readings > li').count()).toBe(made.size)
  })
})

describe('the focus', () => {
  it('goes to the next check when a reading was taken, and the page says it aloud', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    for (let count = 0; count < 3; count += 1) {
      await give(page, fault.typical((await checkOnPage(page))!))
    }
    expect((await focused(page)).id).toBe('check')
    const said = await page.locator('#said').textContent()
    expect(said).toContain('Check to make now: ')
    expect(said).toContain(await page.locator('#check').textContent())
  })

  it('goes to the verdict when there is one', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    await followProposals(page, fault)
    expect((await focused(page)).id).toBe('verdict')
  })

  it('goes to the field when what was typed cannot be taken, which is still there', async () => {
    const { page } = await openPage()
    await states['a reading that cannot be taken']!(page)
    expect(await focused(page)).toMatchObject({ id: 'typed', says: '36 apples' })
    expect(await page.locator('#typed').getAttribute('aria-describedby')).toBe('problem hint')
  })

  it('begins with a way past the head of the page', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    await page.reload()
    await page.keyboard.press('Tab')
    expect((await focused(page)).says).toBe('Skip to the work')
    await page.keyboard.press('Enter')
    expect((await focused(page)).id).toBe('main')
  })
})

it.each([
  { width: 1280, height: 800 },
  { width: 360, height: 780 },
])('nothing that has the focus lies under the bar of the answer: %o', async (viewport) => {
  const { page } = await openPage({ viewport })
  await toHardToReach(page)
  await page.evaluate('document.activeElement.blur(); scrollTo(0, 0)')
  // Each stop on the way is looked at.
  let stops = 0
  await tabTo(page, () => {
    stops += 1
    return stops === 40
  })
})
