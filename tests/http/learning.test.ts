import { describe, expect, it } from 'vitest'
import { allFits } from '../../server/knowledge/fits.ts'
import { type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { openForm } from '../support/job.ts'
import { anyCase } from '../support/knowledge.ts'
import { textIn } from '../support/page.ts'
import { plain } from '../support/plain.ts'

const knowledge = shippedKnowledge()
const pageOf = async (http: Http, address: string) =>
  plain(textIn((await http.get(address).expect(200)).text))

describe('the pages that teach', () => {
  it('list every complaint that some machine here can have, by group, and the words', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/learn').expect(200)
    const complaints = new Set(allFits(knowledge).map(({ complaint }) => complaint.id))
    expect(complaints.size).toBeGreaterThan(20)
    for (const id of complaints) expect(text).toContain(`href="/learn/${id}"`)
    expect(text).toContain('href="/learn/words"')
    expect(text).toContain('Spark and running')
  })

  it('teach every complaint on every machine that it fits, with its tree drawn whole', async () => {
    const { http } = await readyApp()
    const fits = allFits(knowledge)
    expect(fits.length).toBeGreaterThan(50)
    for (const { machine, complaint } of fits) {
      const address = `/learn/${complaint.id}?machine=${machine.id}`
      const { status, text } = await http.get(address)
      expect(status, address).toBe(200)
      expect(text, address).toContain('class="tree-drawing"')
      expect(text, address).not.toContain('faults folded')
      expect(text, address).toContain('id="check-1"')
      expect(text, address).not.toMatch(/undefined|NaN|\bnull\b|\[object/)
    }
  })

  it('take the first machine that fits where none is named', async () => {
    const { http } = await readyApp()
    const { machine } = allFits(knowledge).find(({ complaint }) => complaint.id === 'no-spark')!
    expect(await pageOf(http, '/learn/no-spark')).toContain(
      `On the ${machine.maker} ${machine.name}`,
    )
  })

  it('say of each check what it costs, what it tells, why, and where to practise it', async () => {
    const { http } = await readyApp()
    const page = await pageOf(http, '/learn/no-spark?machine=pedlar-1c')
    const { why, teach } = knowledge.checkKinds.get('ask-controls')!
    expect(page).toContain(plain(why))
    expect(page).toContain(plain(teach!))
    expect(page).toMatch(/what was like \d+ suspects is like \d+ after it/)
    expect(page).toMatch(/Clears: .*Likeliest then: /)
    const { text } = await http.get('/learn/no-spark?machine=pedlar-1c')
    expect(text).toContain('/practice?machine=pedlar-1c&amp;complaint=no-spark')
  })

  it('say what clears means before an answer first does, once, and in the words of the trade', async () => {
    const { http } = await readyApp()
    for (const address of ['/learn/no-spark?machine=pedlar-1c', '/learn/dead-lights']) {
      const page = await pageOf(http, address)
      const said = page.split('“Clears” names the suspects that this answer lets go')
      expect(said.length, address).toBe(2)
      expect(said[0], address).not.toContain('Clears: ')
      expect(said[1], address).toContain('Clears: ')
      expect(said[1], address).toContain('Letting go of a suspect')
    }
  })

  it('put cautions before the first check', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/learn/no-spark?machine=pedlar-1c')
    const caution = text.indexOf('class="cautions"')
    expect(caution).toBeGreaterThan(0)
    expect(text.indexOf('id="check-1"')).toBeGreaterThan(caution)
  })

  it('explain the words that they use, and all of them on a page of their own', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/learn/no-spark?machine=pedlar-1c')
    expect(text).toContain('id="exciter"')
    expect(text).not.toContain('id="points"')
    const words = await http.get('/learn/words').expect(200)
    const ids = Object.keys(knowledge.glossary.words)
    expect(ids.length).toBeGreaterThan(30)
    for (const id of ids) expect(words.text).toContain(`<div id="${id}">`)
    expect(words.text.match(/<svg class="part-picture"/g)!.length).toBeGreaterThan(15)
  })

  it.each([
    ['/learn/warp-drive', 'No such complaint', '/learn'],
    ['/learn/no-spark?machine=warp-drive', 'No such machine', '/learn/no-spark'],
    ['/learn/no-pump-prime?machine=clipwell-1m', 'Not on this machine', '/learn/no-pump-prime'],
  ])('do not know %s: %s, and lead on', async (address, title, wayOn) => {
    const { http } = await readyApp()
    const { status, text } = await http.get(address)
    expect(status).toBe(404)
    expect(text).toContain(`<h1>${title}</h1>`)
    expect(text).toContain(`href="${wayOn}"`)
  })
})

describe('why this check, on a job', () => {
  it('has the line and what an old hand says, and leads an apprentice to the order', async () => {
    const { http } = await readyApp()
    const kase = anyCase()
    const asked = [...kase.checks.values()].find(({ teach }) => teach !== undefined)!
    for (const [who, leads] of [
      ['apprentice', true],
      ['self', false],
    ] as const) {
      const form = { ...openForm(kase), who }
      const answer = await http.post('/jobs').type('form').send(form).expect(303)
      const job = answer.headers.location!
      const { text } = await http.get(`${job}?check=${asked.id}&open=why`).expect(200)
      expect(plain(textIn(text))).toContain(plain(asked.teach!))
      expect(text.includes(`/learn/${kase.complaint.id}?machine=${kase.machine.id}`)).toBe(leads)
    }
  })
})
