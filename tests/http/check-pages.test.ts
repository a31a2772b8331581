import { describe, expect, it } from 'vitest'
import type { Case } from '../../server/knowledge/case.ts'
import { allCases, appForAll, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn } from '../support/page.ts'

/** One check of each kind on each machine: their pages hold everything that the others hold, in its words. */
const checks = [
  ...new Map(
    allCases().flatMap((kase) =>
      [...kase.checks.values()].map((card) => [
        `${kase.machine.id} ${card.id.split('.')[0]}`,
        [kase.complaint.id, card.id, kase, card] as const,
      ]),
    ),
  ).values(),
]

/** What a template prints where the presenter left a hole, and what a filled-in text must not keep. */
const holes = /\bundefined\b|\bnull\b|\bNaN\b|\[object|\{[a-z]+\}|\bInfinity\b|\.\.|“”|:\.|\.:/

function headings(html: string): number[] {
  return [...html.matchAll(/<h([1-6])\b/g)].map((match) => Number(match[1]))
}

function ids(html: string): string[] {
  return [...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]!)
}

describe('the page of each kind of check', () => {
  const { http } = appForAll()
  const jobs = new Map<Case, string>()

  it.each(checks)('%s, %s', async (_, id, kase, card) => {
    const job = jobs.get(kase) ?? (await openJob(http(), kase))
    jobs.set(kase, job)
    const { text } = await http().get(`${job}?check=${id}`).expect(200)

    const words = textIn(text)
    expect(words.match(holes)).toBeNull()
    expect(words).toContain(textIn(card.why))
    // Cautions stand before the steps they belong to, and not behind a click.
    const [, after = ''] = text.split('class="box check"')
    const [box = ''] = after.split('</section>')
    const first = box.indexOf('class="hazard')
    expect(first === -1).toBe(card.cautions.length === 0)
    expect(first).toBeLessThan(box.indexOf('class="steps"'))
    expect(first).toBeLessThan(box.indexOf('<details'))
    expect(text.match(/class="hazard notice/g)).toHaveLength(1)

    const levels = headings(text)
    expect(levels.filter((level) => level === 1)).toHaveLength(1)
    expect(levels.filter((level, i) => level - (levels[i - 1] ?? 0) > 1)).toEqual([])
    expect(ids(text)).toEqual([...new Set(ids(text))])
    expect(text).not.toMatch(/\sstyle="|\son[a-z]+="|<style|<script>/)
  })
})

it('shows what was typed by people as text, never as markup', async () => {
  const [kase] = allCases()
  const { http } = await readyApp()
  const note = '<b id="evil">bold</b>'
  const job = await openJob(http, kase!)
  const opened = await http
    .post('/jobs')
    .type('form')
    .send({ job: `${kase!.machine.id}/${kase!.complaint.id}`, where: 'bench', air: '20' })
    .send({ engine: 'cold', meter: '', note })
  // Refused, as it has no meter: the note comes back in its field.
  expect(opened.status).toBe(422)
  expect(opened.text).toContain('&lt;b id=&quot;evil&quot;&gt;')
  expect(opened.text).not.toContain('<b id="evil">')
  const check = [...kase!.checks.keys()][0]!
  await post(http, `${job}/skips`, { version: 1, check, reason: note }).expect(303)
  const { text } = await http.get(job).expect(200)
  expect(text).toContain('&lt;b id=&quot;evil&quot;&gt;')
  expect(text).not.toContain('<b id="evil">')
})

it('says what the meter is set to where its reading is answered and not typed', async () => {
  const { http } = await readyApp()
  const kase = allCases().find(({ checks }) =>
    [...checks.keys()].some((id) => id.startsWith('diode-test')),
  )!
  const job = await openJob(http, kase)
  const check = [...kase.checks.keys()].find((id) => id.startsWith('diode-test'))!
  const { text } = await http.get(`${job}?check=${check}`).expect(200)
  expect(textIn(text)).toContain('Meter set to Diode range.')
})
