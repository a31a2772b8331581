import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { openNewPage, openPage } from '../support/browser.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { checkOnPage, give, toNewJob } from '../support/journey.ts'
import { largest, states } from '../support/states.ts'

const fault = hiddenFault(largest)

describe('with scripts', () => {
  it('only the job is fetched, not the page around it', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    await page.evaluate('document.querySelector(".masthead").dataset.kept = "yes"')
    const answers: string[] = []
    page.on('response', (response) => answers.push(response.request().resourceType()))
    await give(page, fault.typical((await checkOnPage(page))!))
    expect(await page.locator('.masthead').getAttribute('data-kept')).toBe('yes')
    expect(answers).toEqual(['fetch', 'fetch'])
  })

  it('the title of the window follows the job', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    const before = await page.title()
    await give(page, fault.typical((await checkOnPage(page))!))
    expect(await page.title()).not.toBe(before)
    expect(await page.title()).toMatch(/^Job 1: .+ · Coilhound$/)
  })

  it('the address bar keeps the address of the job when a reading cannot be taken', async () => {
    const { page } = await openPage()
    await states['a reading that cannot be taken']!(page)
    expect(new URL(page.url()).pathname).toBe('/jobs/1')
  })

  it('going back shows the job as it is now', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    await page.locator('.for-others .checks a').first().click()
    await page.getByRole('link', { name: 'Back to the proposed check' }).waitFor()
    await page.goBack()
    await page.getByText('Check to make now', { exact: true }).waitFor()
    expect(page.url()).toMatch(/\/jobs\/1$/)
    expect(await page.locator('h1').count()).toBe(1)
  })

  it('somebody else’s change is shown with a sentence, and nothing is lost', async () => {
    const { page, address } = await openPage()
    await toNewJob(page, largest)
    const version = { version: '1', check: 'ask-before', choice: 'could-not-tell' }
    await fetch(`${address}/jobs/1/readings`, {
      method: 'POST',
      body: new URLSearchParams(version),
    })
    const { choose, type } = { choose: '', type: '', ...fault.typical((await checkOnPage(page))!) }
    if (type) await page.locator('#typed').fill(type)
    await page.locator(type ? '#reading .go' : `#reading button[value="${choose}"]`).click()
    await page.getByText('moved on').first().waitFor()
    expect(await page.locator('.readings > li').count()).toBe(1)
    if (type) expect(await page.locator('#typed').inputValue()).toBe(type)
  })

  it('an error page takes the place of the whole page', async () => {
    const { page } = await openPage()
    await toNewJob(page, largest)
    await page.route('**/jobs/1/readings', (route) =>
      route.continue({ url: route.request().url().replace('/jobs/1/', '/jobs/999/') }),
    )
    await page.locator('#reading button').first().click()
    await page.getByRole('heading', { name: 'No such job' }).waitFor()
    expect(await page.locator('h1').count()).toBe(1)
    expect(await page.locator('main').count()).toBe(1)
    expect(await page.locator('.masthead').count()).toBe(1)
  })

  it('says so when the server does not answer, and keeps what was typed', async () => {
    const { app, address } = await readyApp()
    const { page } = await openNewPage({ baseURL: address })
    await states['a measurement at a connector that is hard to reach']!(page)
    const closed = app.close()
    // A line that the browser opened ahead, and never asked anything on, would hold the close up.
    app.server.closeAllConnections()
    await closed
    await page.locator('#typed').fill('52.5')
    await page.locator('#typed').press('Enter')
    const said = page.getByText('No answer from the server')
    await said.waitFor()
    expect(await said.isVisible()).toBe(true)
    expect(await page.locator('#typed').inputValue()).toBe('52.5')
  })
})

it('hears what the content security policy stops, so that silence means something', async () => {
  const { page, complaints } = await openPage()
  await page.goto('/')
  expect(complaints).toEqual([])
  await page.evaluate(`document.body.innerHTML += '<p style="color: red">red</p>'`)
  await expect.poll(() => complaints.join()).toContain('Content Security Policy')
})
