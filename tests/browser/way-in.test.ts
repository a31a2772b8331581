import type { Page } from 'playwright-core'
import request from 'supertest'
import { describe, expect, it } from 'vitest'
import { axeFindings } from '../support/axe.ts'
import { openPage } from '../support/browser.ts'
import { openJobByClicks, toNewJob } from '../support/journey.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { largest } from '../support/states.ts'

const machineCount = shippedKnowledge().machines.size + 300

const form = `/jobs/new?machine=${largest.machine.id}&complaint=${largest.complaint.id}`

/** What ships, with so many machines more that nobody looks through them. */
function manyMachines() {
  const knowledge = shippedKnowledge()
  const [first] = knowledge.machines.values()
  const more = Array.from({ length: 300 }, (_, i) => ({
    ...first!,
    id: `crake-${i}`,
    name: `Crake ${i}`,
    maker: 'Fennbank',
    family: 'Fennbank winches',
  }))
  const machines = [...knowledge.machines.values(), ...more]
  return { ...knowledge, machines: new Map(machines.map((machine) => [machine.id, machine])) }
}

const machinesOn = (page: Page) => page.locator('.machine h2').allTextContents()

/** Puts what is between head and foot of another page into this one: to visit them all would take many times as long. */
const bring = (html: string) =>
  `document.querySelector('main').replaceWith(new DOMParser().parseFromString(${JSON.stringify(html)}, 'text/html').querySelector('main'))`

/** Where what is filled in or pressed ends, of what is seen. */
const bottomsOfFields = `[...document.querySelectorAll('#new :is(fieldset, input, select, button)')]
  .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height > 0)
  .map((each) => each.getBoundingClientRect().bottom)`

/** Everything that can be pressed and is seen, and is too low for a glove. */
const lowTargets = `[...document.querySelectorAll('main :is(a, button, summary, select, input:not([type=hidden])), .masthead a, .foot a')]
  .map((target) => target.matches('[type=radio], [type=checkbox]') ? target.closest('label') : target)
  .filter((target) => target.checkVisibility() && target.getBoundingClientRect().height < 44)
  .map((target) => target.outerHTML)`

describe('the form that opens a job', () => {
  it('is one screen of a phone and of a desk, whatever it is about', async () => {
    const { page, address } = await openPage()
    const http = request.agent(address).set('Accept-Encoding', 'identity')
    const forms: { says: string; html: string }[] = []
    for (const { machine, complaint } of shippedCases()) {
      const form = `/jobs/new?machine=${machine.id}&complaint=${complaint.id}`
      const { text: html } = await http.get(form).expect(200)
      forms.push({ says: `${complaint.title} on ${machine.id}`, html })
    }
    expect(forms.length).toBeGreaterThan(20)
    await page.goto(form)
    for (const screen of [
      { width: 360, height: 780 },
      { width: 1280, height: 800 },
    ]) {
      await page.setViewportSize(screen)
      for (const { says, html } of forms) {
        const bottoms = await page.evaluate<number[]>(`${bring(html)}, ${bottomsOfFields}`)
        expect(bottoms.length).toBeGreaterThan(10)
        const where = `${says}, ${screen.width} wide`
        expect(Math.max(...bottoms), where).toBeLessThanOrEqual(screen.height)
      }
    }
  })

  it('opens the job that other tests begin with, where nothing is changed on it', async () => {
    const { page, store } = await openPage()
    await openJobByClicks(page, largest)
    await toNewJob(page, largest)
    const [[byClicks], [past]] = await Promise.all([store.jobs.events(1), store.jobs.events(2)])
    expect(byClicks!.body).toMatchObject({ machine: largest.machine.id })
    expect(past!.body).toEqual(byClicks!.body)
  })

  it('follows the place with its tools, and keeps what was typed', async () => {
    const { page } = await openPage()
    await page.goto(form)
    await page.getByLabel('Air temperature').fill('-10c')
    await page.getByLabel('Trailside').check()
    await page.locator('input[name=set][value=trail]:checked').waitFor()
    expect(await page.getByLabel('Air temperature').inputValue()).toBe('-10c')
    await page.getByRole('button', { name: 'Open the job' }).click()
    await page.locator('#check').waitFor()
    expect(await page.locator('.facts').first().textContent()).toContain('−10\u00a0°C')
  })

  it.each([true, false])('takes single tools of the chosen set, scripts %s', async (scripts) => {
    const { page, store } = await openPage({ javaScriptEnabled: scripts })
    await page.goto(form)
    await page.getByLabel('Hands only').check()
    await page.locator('.sets summary:visible').click()
    await page.locator('[name=tools-hands][value=torch]').check()
    await page.getByRole('button', { name: 'Open the job' }).click()
    await page.locator('#check').waitFor()
    const [opened] = await store.jobs.events(1)
    expect(opened).toMatchObject({ body: { conditions: { tools: ['torch'] } } })
  })

  it.each([true, false])(
    'brings what is wrong into sight, with the focus on it, scripts %s',
    async (scripts) => {
      const viewport = { width: 360, height: 780 }
      const { page } = await openPage({ javaScriptEnabled: scripts, viewport })
      await page.goto(form)
      await page.getByLabel('Air temperature').fill('warm')
      await page.getByLabel('Owner, or any note').fill('Hilda')
      await page.getByLabel('Owner, or any note').press('Enter')
      const beside = page.locator('#air-problem')
      await beside.waitFor()
      expect(await page.title()).toBe('Not open yet · Coilhound')
      expect((await page.getByRole('alert').boundingBox())!.y).toBeLessThan(780)
      expect((await beside.boundingBox())!.y).toBeLessThan(780)
      expect(await page.getByLabel('Air temperature').inputValue()).toBe('warm')
      expect(await page.getByLabel('Owner, or any note').inputValue()).toBe('Hilda')
      expect(await page.locator('[role=alert]:focus').count()).toBe(1)
    },
  )
})

describe('the machine among three hundred', () => {
  it('is filtered for as one types, and its complaint is one press away', async () => {
    const { page, complaints } = await openPage({}, { knowledge: manyMachines() })
    await page.goto('/')
    expect(await machinesOn(page)).toHaveLength(8)
    expect(await page.locator('#machines').textContent()).toContain(
      `The first 8 of ${machineCount} machines`,
    )
    await page.locator('#find').pressSequentially('craek 277')
    await page.getByText(`1 of ${machineCount} machines`).waitFor()
    expect(await machinesOn(page)).toEqual(['Fennbank Crake 277'])
    expect(await page.locator('#find').inputValue()).toBe('craek 277')
    await page.locator('.complaints a').first().click()
    await page.getByRole('heading', { name: 'Open a job' }).waitFor()
    await page.goBack()
    await page.getByText(`1 of ${machineCount} machines`).waitFor()
    expect(complaints).toEqual([])
  })

  it('is searched for without scripts', async () => {
    const parts = { knowledge: manyMachines() }
    const { page } = await openPage({ javaScriptEnabled: false }, parts)
    await page.goto('/')
    await page.locator('#find').fill('winches 31')
    await page.locator('#find').press('Enter')
    await page.getByText(`1 of ${machineCount} machines`).waitFor()
    expect(await machinesOn(page)).toEqual(['Fennbank Crake 31'])
  })
})

describe('the list of jobs', () => {
  it('is filtered as one types and chooses', async () => {
    const { page, complaints } = await openPage()
    for (let count = 0; count < 3; count += 1) await toNewJob(page, largest)
    await page.goto('/jobs')
    await page.locator('#find').pressSequentially('0002')
    await page.getByText('1 job found, 1 in progress').waitFor()
    expect(await page.locator('.jobs a').count()).toBe(1)
    await page.getByLabel('Show').selectOption('closed')
    await page.getByText('No job fits').waitFor()
    expect(new URL(page.url()).search).toBe('?find=0002&in=&state=closed')
    await page.getByRole('link', { name: 'All jobs', exact: true }).click()
    await page.getByText('3 jobs, 3 in progress', { exact: true }).waitFor()
    expect(complaints).toEqual([])
  })
})

describe.each([
  ['the front page with a machine unfolded', `/?machine=${largest.machine.id}`],
  ['the form', form],
  ['the list of jobs', '/jobs'],
  ['a search that finds nothing', '/jobs?find=zebra'],
  ['a search that cannot be made', '/jobs?find=%3F'],
])('%s', (_, address) => {
  it('has room for a glove, no finding of axe, and fits 320 pixels', async () => {
    const { page } = await openPage({ viewport: { width: 320, height: 640 } })
    await toNewJob(page, largest)
    await page.goto(address)
    for (const summary of await page.locator('.sets summary:visible').all()) await summary.click()
    expect.soft(await page.evaluate(lowTargets)).toEqual([])
    const wider = 'document.documentElement.scrollWidth - innerWidth'
    expect.soft(await page.evaluate(wider)).toBe(0)
    expect.soft(await axeFindings(page), 'in light colours').toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect.soft(await axeFindings(page, 'colours'), 'in dark colours').toEqual([])
  })
})
