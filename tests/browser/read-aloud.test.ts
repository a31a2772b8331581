import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { openNewPage } from '../support/browser.ts'
import { goTo, openTwin, send } from '../support/measuring.ts'
import { giveVoice } from '../support/voice.ts'

const check = 'winding-resistance.exciter-start.exciter-plug'
const read = (page: Page) => page.getByRole('button', { name: 'Read aloud' })
const quiet = (page: Page) => page.getByRole('button', { name: 'Quiet' })

it('a check is read aloud: its cautions first, then its steps, then what is asked', async () => {
  const { page, complaints } = await openNewPage({ viewport: { width: 360, height: 780 } })
  const voice = await giveVoice(page)
  await openTwin(page)
  await goTo(page, check)
  await read(page).click()
  const said = await voice.said()
  expect(new Set(said.map(({ lang, voice }) => `${lang} ${voice}`))).toEqual(
    new Set(['en-GB near en-GB']),
  )
  const texts = said.map(({ text }) => text)
  const shown = await page
    .locator('.check .cautions b, .check .steps li, .check #reading label[for=typed]')
    .allTextContents()
  expect(shown.length).toBeGreaterThan(5)
  const places = ['.check .cautions b', '.check .steps li', '#reading label[for=typed]'].map(
    (selector) =>
      page
        .locator(selector)
        .first()
        .textContent()
        .then((text) => texts.findIndex((each) => each.startsWith(text!.trim().slice(0, 12)))),
  )
  const [caution, step, asked] = await Promise.all(places)
  expect(caution).toBeGreaterThanOrEqual(0)
  expect(step).toBeGreaterThan(caution!)
  expect(asked).toBeGreaterThan(step!)
  expect(asked).toBe(texts.length - 1)
  expect(texts).toContain('A good one reads 310 ohms to 420 ohms')
  expect(texts.join('')).not.toMatch(/Ω|\n|\u00a0/)
  expect(complaints).toEqual([])
})

it('it stops at a second press, and begins anew at a third', async () => {
  const { page } = await openNewPage()
  const voice = await giveVoice(page)
  await openTwin(page)
  await read(page).click()
  const first = (await voice.said()).length
  expect(await voice.isSilent()).toBe(false)
  await quiet(page).click()
  expect(await voice.isSilent()).toBe(true)
  await read(page).click()
  expect(await voice.said()).toHaveLength(2 * first)
  expect(await quiet(page).isVisible()).toBe(true)
  await voice.finish()
  await read(page).waitFor()
})

it('it falls silent once another step stands on the page, and leaves the keyboard where it was', async () => {
  const { page } = await openNewPage()
  const voice = await giveVoice(page)
  await openTwin(page)
  await goTo(page, check)
  await read(page).focus()
  await page.keyboard.press('Enter')
  expect(await page.evaluate('document.activeElement.textContent')).toBe('Quiet')
  expect(await page.locator('#said').textContent()).toBe('')
  await send(page, '365')
  await page.locator('.last').waitFor()
  await expect.poll(voice.isSilent).toBe(true)
  expect(await quiet(page).count()).toBe(0)
})

it('there is no button without a voice, nor with scripts off, until a voice comes', async () => {
  const { page } = await openNewPage()
  await giveVoice(page, [])
  await openTwin(page)
  expect(await page.locator('.aloud').count()).toBe(1)
  expect(await page.locator('.aloud').isVisible()).toBe(false)
  await page.evaluate(
    `voices.push({ name: 'late', lang: 'en-GB', localService: true }); speechSynthesis.dispatchEvent(new Event('voiceschanged'))`,
  )
  expect(await page.locator('.aloud').isVisible()).toBe(true)

  const { page: plain } = await openNewPage({ javaScriptEnabled: false })
  await openTwin(plain)
  expect(await plain.locator('.aloud').isVisible()).toBe(false)
})
