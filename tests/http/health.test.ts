import { setImmediate } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { testability } from '../../server/diagnosis/testability/testability.ts'
import { Figures } from '../../server/health/figures.ts'
import { allFits, fits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { allCases, anyCase, type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { fewCases } from '../support/few-cases.ts'
import { openJob } from '../support/job.ts'
import { addressesIn, textIn } from '../support/page.ts'
import { plain } from '../support/plain.ts'

const waiting = 'Being worked out'

/** Of the shipped knowledge, but nothing of it is worked out yet. */
const freshKnowledge = () => ({ ...shippedKnowledge() })

/** The row of a case: its cells, without the markup. */
function cellsOf(html: string, id: string): string[] {
  const row = html.match(new RegExp(`<tr id="${id.replaceAll('.', '\\.')}">(.*?)</tr>`, 's'))?.[1]
  if (row === undefined) throw new Error(`There is no row for ${id}.`)
  return [...row.matchAll(/<t[hd]\b.*?<\/t[hd]>/gs)].map(([cell]) => plain(textIn(cell)))
}

/** The page as it is once nothing is being worked out any more. */
async function finished(http: Http, address: string): Promise<string> {
  for (;;) {
    const { text } = await http.get(address).expect(200)
    if (!text.includes('id="working"')) return text
  }
}

const rowsIn = (html: string) => [...html.matchAll(/<tr id="/g)].length
const waitingIn = (html: string) => html.split(waiting).length - 1

describe('the page of all cases', () => {
  it('has a row for each complaint on each machine, with a link to a page that is there', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/health').expect(200)
    expect(rowsIn(text)).toBe(allCases().length)
    const links = addressesIn(text).filter((address) => address.startsWith('/health/'))
    expect(links).toHaveLength(allCases().length)
    expect((await http.get(links[0]!)).status).toBe(200)
    for (const { machine, complaint } of allCases()) {
      expect(links).toContain(`/health/${machine.id}/${complaint.id}`)
      expect(cellsOf(text, `${machine.id}.${complaint.id}`)[0]).toBe(complaint.title)
    }
  })

  it('shows the same figures as are worked out without it', async () => {
    const knowledge = fewCases()
    const { http } = await readyApp({ knowledge })
    const text = await finished(http, '/health')
    expect(allFits(knowledge).length).toBeGreaterThan(3)
    for (const { machine, complaint } of allFits(knowledge)) {
      const { model } = caseFor(knowledge, machine.id, complaint.id)
      const found = testability(model)
      const shares = [found.detected, ...found.isolated].map((share) =>
        share > 1 - 1e-9 ? '100 %' : `${(100 * share).toFixed(1)} %`,
      )
      const cells = cellsOf(text, `${machine.id}.${complaint.id}`)
      expect(cells.slice(1, -2)).toEqual([
        String(found.faults),
        ...shares,
        `${found.minutes.toFixed(1)} min`,
      ])
      expect(cells.at(-1)).toMatch(new RegExp(`^\\d+ of ${model.checks.length}$`))
    }
  })

  it('says which rows are still being worked out, and which kinds never pay when none is', async () => {
    const { http } = await readyApp({ knowledge: freshKnowledge() })
    const { text } = await http.get('/health')
    expect(waitingIn(text)).toBe(allCases().length)
    expect(textIn(text)).toContain(
      `All ${allCases().length} are still being worked out. Look again`,
    )
    expect(text).toContain('hx-get="/health"')
    expect(text).not.toContain('id="kinds"')

    const { http: quick } = await readyApp({ knowledge: fewCases() })
    const done = await finished(quick, '/health')
    expect(waitingIn(done)).toBe(0)
    expect(done).not.toContain('hx-get')
    expect(done).toContain('id="kinds"')
    expect(textIn(done)).toMatch(/\d+ of \d+ kinds of check never pay/)
  })

  it('gives a script the part it reloads, and says when the last figure has come', async () => {
    const { http } = await readyApp({ knowledge: fewCases() })
    const first = await http.get('/health').set('HX-Request-Type', 'partial').expect(200)
    expect(first.text).toMatch(/^<div [^>]*id="health"/)
    expect(first.text).toContain('id="working"')
    expect(first.text).not.toContain('hx-partial')
    await finished(http, '/health')
    const last = await http.get('/health').set('HX-Request-Type', 'partial').expect(200)
    expect(last.text).toContain('All figures are worked out.')
  })
})

describe('while figures are worked out', () => {
  it('other pages are answered and jobs are opened', async () => {
    const { http } = await readyApp({ knowledge: freshKnowledge() })
    await http.get('/health').expect(200)
    await http.get('/').expect(200)
    const job = await openJob(http, anyCase())
    await http.get(job).expect(200)
    // Had anything waited for the work to end, there would be nothing left to wait for.
    expect(waitingIn((await http.get('/health').expect(200)).text)).toBeGreaterThan(0)
  })

  it('not even a single long case holds others up', async () => {
    const long = allCases().sort((a, b) => b.model.cutSets.length - a.model.cutSets.length)[0]!
    const address = `/health/${long.machine.id}/${long.complaint.id}`
    const { http } = await readyApp({ knowledge: freshKnowledge() })
    expect((await http.get(address).expect(200)).text).toContain('id="working"')
    await http.get('/').expect(200)
    expect((await http.get(address).expect(200)).text).toContain('id="working"')
  })

  it('a case that is asked for comes first', async () => {
    const { http } = await readyApp({ knowledge: freshKnowledge() })
    await http.get('/health').expect(200)
    const { machine, complaint } = allCases().at(-1)!
    await finished(http, `/health/${machine.id}/${complaint.id}`)
    const { text } = await http.get('/health')
    expect(cellsOf(text, `${machine.id}.${complaint.id}`)).not.toContain(waiting)
    expect(waitingIn(text)).toBeGreaterThan(0)
  })

  it('nothing goes on once the app is closed', async () => {
    const open = fewCases()
    const { http } = await readyApp({ knowledge: open })
    await http.get('/health').expect(200)
    const before = foundOf(open)
    await someTurns()
    // Turns enough for several cases, or their passing would prove nothing below.
    expect(foundOf(open)).toBeGreaterThan(before + 1)

    const closed = fewCases()
    const { app, http: other } = await readyApp({ knowledge: closed })
    await other.get('/health').expect(200)
    await app.close()
    const atClose = foundOf(closed)
    await someTurns()
    expect(foundOf(closed)).toBe(atClose)
  })
})

/** How many cases of it are worked out; looking begins nothing. */
function foundOf(knowledge: Knowledge): number {
  const figures = new Figures(knowledge, () => {})
  return allFits(knowledge).filter((fit) => figures.of(fit).kind === 'found').length
}

async function someTurns(): Promise<void> {
  for (let turn = 0; turn < 200; turn += 1) await setImmediate()
}

describe('the page of one case', () => {
  const { machine, complaint } = allCases().find(
    (kase) => kase.complaint.id === 'lamps-dim' && kase.machine.outputs.length > 1,
  )!
  const address = `/health/${machine.id}/${complaint.id}`
  const { machines, complaints } = shippedKnowledge()
  const misfit = [...machines.values()]
    .flatMap((machine) => [...complaints.values()].map((complaint) => ({ machine, complaint })))
    .find(({ machine, complaint }) => !fits(complaint, machine))!

  it('shows its figures for each tool box, and names in words what they leave open', async () => {
    const { http } = await readyApp()
    const html = await finished(http, address)
    const text = plain(textIn(html))
    const kase = caseFor(shippedKnowledge(), machine.id, complaint.id)
    const found = testability(kase.model)
    expect(text).toContain(`Faults ${found.faults} Detected ${(100 * found.detected).toFixed(0)} %`)
    expect(text).toContain(`Time ${found.minutes.toFixed(1)} min`)
    for (const box of [
      'a full tool box',
      'what one has at the bench',
      'what one has at the trailside',
    ]) {
      expect(text).toContain(`With ${box}`)
    }
    expect(text).toContain('Groups that no check tells apart')
    const titles = [...kase.checks.values()].map(({ title }) => title)
    const listed = [...html.matchAll(/<li><b>(.*?)<\/b>/g)].map(([, title]) => textIn(title!))
    expect(listed.filter((title) => titles.includes(title)).length).toBeGreaterThan(5)
    const ids = [...kase.parts.keys(), ...kase.checks.keys()].filter((id) => /[.-]/.test(id))
    expect(ids.length).toBeGreaterThan(20)
    for (const id of ids) expect(text).not.toContain(id)
  })

  it('says undefined, null or NaN nowhere', async () => {
    const { http } = await readyApp()
    for (const each of [await finished(http, address), (await http.get('/health')).text]) {
      expect(each).not.toMatch(/\b(undefined|null|NaN)\b|\[object/)
    }
  })

  it.each([
    `/health/nothing/${complaint.id}`,
    `/health/${machine.id}/nothing`,
    `/health/${machine.id}/constructor`,
    `/health/${misfit.machine.id}/${misfit.complaint.id}`,
  ])('is not there for what does not fit, with a way on: %s', async (where) => {
    const { http } = await readyApp()
    const answer = await http.get(where)
    expect(answer.status).toBe(404)
    expect(textIn(answer.text)).toContain('There is no such machine, or no such complaint on it.')
    expect(addressesIn(answer.text)).toContain('/health')
  })
})
