import { describe, expect, it } from 'vitest'
import { cardTools } from '../../server/cards/drawing/tools.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { allCases, appForAll, readyApp, shippedKnowledge, treesFolder } from '../support/app.ts'
import { textIn } from '../support/page.ts'

const { http } = appForAll()

const tools = cardTools(shippedKnowledge()).map(({ id }) => id)
const hrefOf = ({ machine, complaint }: Case, set: string) =>
  `/machines/${machine.id}/cards/${complaint.id}?tools=${set}`
const caseOf = (machine: string, complaint: string) =>
  allCases().find((kase) => kase.machine.id === machine && kase.complaint.id === complaint)!

/** Every case, the sets of tools in turn, and what has most to say with every set. */
const asked = [
  ...allCases().map((kase, i) => [kase, tools[i % tools.length]!] as const),
  ...tools.map((set) => [caseOf('larkfell-2i', 'cuts-out'), set] as const),
  ...tools.map((set) => [caseOf('ferrymere-3t', 'one-cylinder-dead'), set] as const),
].map(([kase, set]) => ({ name: `${kase.complaint.id} on ${kase.machine.id}`, set, kase }))

describe('a pocket card', () => {
  it.each(asked)('of $name with $set is small and stands alone', async ({ kase, set }) => {
    const { text, headers } = await http().get(hrefOf(kase, set)).expect(200)
    expect(Buffer.byteLength(text)).toBeLessThan(200_000)
    expect(text).not.toMatch(/<script|<link|<img|https?:|\bsrc=|\son[a-z]+=|@import|url\(/)
    for (const [, href] of text.matchAll(/href="([^"]*)"/g)) expect(href).toMatch(/^#/)
    expect(headers['content-security-policy']).toMatch(
      /^default-src 'none'; style-src 'sha256-[^']+';/,
    )
    const words = textIn(text)
    for (const says of [kase.complaint.title, ...shippedKnowledge().home.stay]) {
      expect(words).toContain(textIn(says))
    }
    expect(words).toMatch(/this card ends: .*\d\s%/)
    expect(words).toContain('The maker’s manual and local rules come before anything')
    expect(words.indexOf('danger')).toBeLessThan(words.indexOf('Step by step'))
    expect(words.indexOf('danger')).toBeGreaterThan(0)
  })

  it('names four fifths of it where the tools can, and says so', async () => {
    const { text } = await http().get(hrefOf(caseOf('larkfell-2i', 'dead-lights'), 'bench'))
    const [, named] = /this card ends: (\d+)\s%\s*in a named part/.exec(textIn(text)) ?? []
    expect(Number(named)).toBeGreaterThanOrEqual(80)
    expect(textIn(text)).toContain('Left out, ')
  })

  it('has each step’s cautions before the step, and an owner’s card in an owner’s words', async () => {
    const { text } = await http().get(hrefOf(caseOf('larkfell-2i', 'no-spark'), 'shed'))
    const steps = text.split('<div class="step">').slice(1)
    expect(steps.length).toBeGreaterThan(5)
    const cranked = steps.filter((step) => step.split('<details')[0]!.includes('pull the rope'))
    expect(cranked.length).toBeGreaterThan(0)
    for (const step of cranked) {
      const heed = step.indexOf('class="heed"')
      expect(heed).toBeGreaterThan(0)
      expect(heed).toBeLessThan(step.indexOf('<ol>'))
    }
  })

  it('has each repair once, with its cautions before it, where the card is heavy, and beside its ending where not', async () => {
    const heavy = (await http().get(hrefOf(caseOf('ferrymere-3t', 'one-cylinder-dead'), 'bench')))
      .text
    const light = (await http().get(hrefOf(caseOf('larkfell-2i', 'lamps-too-bright'), 'bench')))
      .text
    const repairs = heavy.slice(
      heavy.indexOf('<h2>Repairs</h2>'),
      heavy.indexOf('class="afterwards"'),
    )
    const named = [...heavy.matchAll(/under “(.*?)”/g)].map(([, name]) => name!)
    expect(named.length).toBeGreaterThan(20)
    const found = [...repairs.matchAll(/<details><summary>(.*?)<\/summary>(.*?)<\/details>/gs)]
    expect(found.map(([, name]) => name).toSorted()).toEqual([...new Set(named)].toSorted())
    const lead = found.find(([, name]) => name === 'The top plug lead')![2]!
    expect(lead.indexOf('touch no lead')).toBeGreaterThan(0)
    expect(lead.indexOf('touch no lead')).toBeLessThan(lead.indexOf('<p>'))
    expect(heavy).toMatch(/As in step \d+ above\./)
    expect(light).toContain('<b>Repair:</b>')
    expect(light).not.toContain('<h2>Repairs</h2>')
  })

  it('has nobody pull what kicks before the key was looked at', async () => {
    const kase = allCases().find(({ complaint }) => complaint.bars?.[0]?.until === 'key-look')!
    const { text } = await http().get(hrefOf(kase, 'bench'))
    const titles = [...text.matchAll(/<h3><span class="n">\d+<\/span> (.*?)<\/h3>/g)].map(
      ([, title]) => title!,
    )
    const key = [...kase.checks.values()].find(({ id }) => id.startsWith('key-look'))!
    const at = titles.findIndex((title) => title.toLowerCase() === key.title.toLowerCase())
    expect(at).toBeGreaterThanOrEqual(0)
    const engineOf = (title: string) =>
      [...kase.checks.values()].find((c) => c.title.toLowerCase() === title.toLowerCase())?.engine
    for (const title of titles.slice(0, at)) expect(engineOf(title)).toBe('stopped')
  })

  it('is the same to the letter, made again from the same knowledge', async () => {
    const href = hrefOf(caseOf('pedlar-1c', 'no-spark'), 'along')
    const { text: first } = await http().get(href).expect(200)
    const again = await readyApp({ knowledge: loadKnowledge(treesFolder) })
    const { text: second } = await again.http.get(href).expect(200)
    expect(second).toBe(first)
    expect(first).toMatch(/Knowledge [0-9a-f]{10}\./)
  })
})

describe('the cards of a machine', () => {
  it('are listed with their books, from its limits', async () => {
    const { text: limits } = await http().get('/machines/pedlar-1c').expect(200)
    expect(limits).toContain('href="/machines/pedlar-1c/cards"')
    const { text } = await http().get('/machines/pedlar-1c/cards').expect(200)
    const fits = allCases().filter(({ machine }) => machine.id === 'pedlar-1c')
    for (const set of tools) {
      expect(text).toContain(`href="/machines/pedlar-1c/cards/book?tools=${set}"`)
      for (const kase of fits) expect(text).toContain(`href="${hrefOf(kase, set)}"`)
    }
  })

  it('are one small book', async () => {
    const { text } = await http().get('/machines/clipwell-1m/cards/book?tools=bare').expect(200)
    const fits = allCases().filter(({ machine }) => machine.id === 'clipwell-1m')
    expect(fits.length).toBeGreaterThan(3)
    for (const { complaint } of fits) {
      expect(text).toContain(`<a href="#${complaint.id}">`)
      expect(text.split(`id="${complaint.id}"`)).toHaveLength(2)
    }
    expect(Buffer.byteLength(text)).toBeLessThan(fits.length * 200_000)
  })

  it.each([
    ['/machines/nothing/cards', 'There is no machine of that name here.'],
    ['/machines/nothing/cards/no-spark', 'There is no machine of that name here.'],
    ['/machines/pedlar-1c/cards/nothing', 'This machine has no complaint of that name.'],
    ['/machines/pedlar-1c/cards/no-spark?tools=magic', 'There is no set of tools of that name.'],
    ['/machines/pedlar-1c/cards/book?tools=magic', 'There is no set of tools of that name.'],
  ])('say at %s what is not there, and a way on', async (href, says) => {
    const { text } = await http().get(href).expect(404)
    expect(textIn(text)).toContain(says)
    expect(text).toContain('<a class="way" href="/')
  })
})
