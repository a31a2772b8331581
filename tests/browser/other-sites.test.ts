import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { anyCase } from '../support/app.ts'
import { openNewPage } from '../support/browser.ts'
import { openForm } from '../support/job.ts'
import { otherSite } from '../support/other-site.ts'

const kase = anyCase()

/** A form that opens a job at this address. */
function trap(address: string): string {
  const fields = Object.entries(openForm(kase)).flatMap(([name, values]) =>
    [values].flat().map((value) => `<input type="hidden" name="${name}" value="${value}">`),
  )
  return `<form method="post" action="${address}/jobs">${fields.join('')}<button>Win</button></form>`
}

describe('a page of another site whose name was made to point here', () => {
  /** The page as that site itself sent it, before its name pointed here. */
  async function openTrap(name: string, names: readonly string[] = []) {
    const { page, address, store } = await openNewPage({}, { names })
    const here = address.replace('127.0.0.1', name)
    await page.route(`${here}/trap`, (route) =>
      route.fulfill({ contentType: 'text/html', body: trap(here) }),
    )
    await page.goto(`${here}/trap`)
    return { page, here, store }
  }
  const read = (page: Page, address: string) =>
    page.evaluate<string>(`fetch('${address}').then((answer) => answer.text())`)

  it('cannot read the list of jobs, nor anything else', async () => {
    const { page } = await openTrap('foreign.example')
    for (const address of ['/jobs', '/', '/static/coilhound.css', '/nothing', '/%']) {
      const text = await read(page, address)
      expect(text).toMatch(/^Coilhound does not answer to the name foreign\.example: .*\n$/)
    }
  })

  it('cannot post a job, with a form or with a script', async () => {
    const { page, here, store } = await openTrap('foreign.example')
    const status = `fetch('/jobs', {
      method: 'POST',
      body: new URLSearchParams(new FormData(document.forms[0])),
    }).then((answer) => answer.status)`
    expect(await page.evaluate(status)).toBe(421)
    await page.getByRole('button').click()
    await page.getByText('does not answer to the name foreign.example').waitFor()
    expect(page.url()).toBe(`${here}/jobs`)
    expect(await store.jobs.list(9)).toEqual([])
  })

  // Or nothing above would show that it was refused for its name.
  it('could do both under a name that is answered', async () => {
    const { page, store } = await openTrap('workshop.example', ['workshop.example'])
    expect(await read(page, '/jobs')).toContain('<html')
    await page.getByRole('button').click()
    await page.locator('#job').waitFor()
    expect(await store.jobs.list(9)).toHaveLength(1)
  })
})

// To a name a browser says less than to this computer's own address: only the origin, not the site.
describe.each(['127.0.0.1', 'workshop.example'])('a page of another site, to us at %s', (name) => {
  async function openOurs() {
    const { page, address, store, complaints } = await openNewPage({}, { names: [name] })
    return { page, ours: address.replace('127.0.0.1', name), store, complaints }
  }

  it('cannot post a form from another port', async () => {
    const { page, ours, store } = await openOurs()
    await page.goto(await otherSite(trap(ours)))
    await page.getByRole('button').click()
    await page.getByRole('heading', { name: 'Not from here' }).waitFor()
    expect(page.url()).toBe(`${ours}/jobs`)
    expect(await store.jobs.list(9)).toEqual([])
  })

  it.each([
    [
      'a sandboxed frame',
      (form: string) => `<iframe sandbox="allow-forms" srcdoc='${form}'></iframe>`,
    ],
    [
      'a data: address',
      (form: string) => `<iframe src='data:text/html,${encodeURIComponent(form)}'></iframe>`,
    ],
  ])('cannot post a form whose origin it hides in %s', async (_, framed) => {
    const { page, ours, store } = await openOurs()
    await page.goto(await otherSite(framed(trap(ours))))
    const answered = page.waitForResponse(`${ours}/jobs`)
    await page.frameLocator('iframe').getByRole('button').click()
    expect((await answered).status()).toBe(403)
    expect((await (await answered).request().allHeaders()).origin).toBe('null')
    expect(await store.jobs.list(9)).toEqual([])
  })

  it('cannot read with a script what our own page can', async () => {
    const { page, ours } = await openOurs()
    const read = `fetch('${ours}/jobs').then((answer) => answer.text(), String)`
    await page.goto(await otherSite('<p>Nothing to see</p>'))
    expect(await page.evaluate(read)).toBe('TypeError: Failed to fetch')
    await page.goto(`${ours}/`)
    expect(await page.evaluate(read)).toContain('<html')
  })

  it.each(['/', '/jobs/new', '/nothing'])('cannot show %s in a frame', async (path) => {
    const { page, ours, complaints } = await openOurs()
    await page.goto(await otherSite(`<iframe src="${ours}${path}"></iframe>`))
    await expect.poll(() => complaints.join()).toMatch(/frame-ancestors/)
    const [, frame] = page.frames()
    expect(await frame!.content()).not.toContain('Coilhound')
  })
})
