import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { openPage } from '../support/browser.ts'
import { openTwin, take } from '../support/measuring.ts'
import {
  plainJpeg,
  plainWebps,
  png,
  tellingJpeg,
  tellingPng,
  tellingWebp,
} from '../support/pictures.ts'

const check = 'winding-resistance.exciter-start.exciter-plug'

async function add(page: Page, buffer: Buffer, name = 'photo.jpg'): Promise<void> {
  const mimeType = 'image/jpeg'
  await page.getByLabel('Picture', { exact: true }).setInputFiles({ name, mimeType, buffer })
  await page.getByRole('button', { name: 'Add it' }).click()
}

/** How large a browser draws it, turned upright; nothing where it cannot. */
const drawn = (page: Page): Promise<[number, number][]> =>
  page.evaluate(
    `Promise.all([...document.querySelectorAll('.photos img')].map(async (img) => {
      img.loading = 'eager'
      await img.decode().catch(() => {})
      return [img.naturalWidth, img.naturalHeight]
    }))`,
  )

it('a photo is added and deleted with scripts off, and stands with its reading and on the sheet', async () => {
  const { page } = await openPage({ javaScriptEnabled: false })
  await openTwin(page)
  const job = new URL(page.url()).pathname
  await page.goto(`${job}?check=${check}`)
  await page.locator('#typed').fill('365')
  await page.getByRole('button', { name: 'Take', exact: false }).first().click()
  await page.getByRole('link', { name: 'Add a photo' }).click()
  await page.getByLabel('What it shows').selectOption(check)
  await add(page, Buffer.from('<svg/>'))
  expect(await page.getByRole('alert').textContent()).toContain('That is no JPEG, PNG or WebP')
  expect(await page.getByLabel('What it shows').inputValue()).toBe(check)
  await add(page, tellingJpeg())
  const name = /^Photo 1: Resistance of the start exciter winding/
  await page.getByRole('img', { name }).waitFor()
  for (const place of [job, `${job}/sheet`]) {
    await page.goto(place)
    await page.getByRole('img', { name }).waitFor()
  }
  await page.goto(`${job}/photos`)
  await page.getByRole('button', { name: /^Delete photo 1/ }).click()
  await page.getByText('No photo yet.').waitFor()
  expect(await page.getByRole('img', { name }).count()).toBe(0)
})

/** How large a browser draws a picture as it came from the camera. */
async function sizesOf(page: Page, pictures: readonly Buffer[]): Promise<[number, number][]> {
  const texts = JSON.stringify(pictures.map((bytes) => bytes.toString('base64')))
  return page.evaluate(
    `Promise.all(${texts}.map(async (text) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
      const { width, height } = await createImageBitmap(new Blob([bytes]))
      return [width, height]
    }))`,
  )
}

it('what is kept of a picture is drawn as large and turned as it was', async () => {
  const { page, complaints } = await openPage()
  await openTwin(page)
  await take(page, check, '365')
  await page.goto(`${new URL(page.url()).pathname}/photos`)
  const upright = [plainJpeg, ...plainWebps, png(3, 2), tellingJpeg(1)]
  const pictures = [...upright, tellingJpeg(6), tellingPng(6), tellingWebp(6)]
  for (const [i, picture] of pictures.entries()) {
    await add(page, picture)
    await page.getByRole('img', { name: new RegExp(`^Photo ${i + 1}:`) }).waitFor()
  }
  const before = await sizesOf(page, pictures)
  expect(before.slice(0, upright.length)).toEqual(upright.map(() => [3, 2]))
  expect(before[upright.length]).toEqual([2, 3])
  expect(await drawn(page)).toEqual(before)
  expect(complaints.filter((each) => !each.includes('422'))).toEqual([])
})
