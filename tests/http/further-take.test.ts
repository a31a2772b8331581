import { describe, expect, it } from 'vitest'
import { mostTakes } from '../../server/diagnosis/belief/takes.ts'
import { allCases, type Http, readyApp } from '../support/app.ts'
import { faultOf } from '../support/hidden-fault.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.outputs.length === 1,
)!
const slips = (id: string) => kase.model.checks.find((check) => check.id === id)!.slips
const cards = [...kase.checks.values()]
const look = cards.find(({ id, measurand }) => measurand === undefined && slips(id) !== undefined)!
const question = cards.find(({ id }) => slips(id) === undefined)!
// The first answer is the good one, which no slip makes.
const [other, one] = look.answers!

const asking = 'One more take, to be sure'

/** A job with one look, at version 2. */
async function lookedJob() {
  const ready = await readyApp()
  const job = await openJob(ready.http, kase)
  const fields = { version: 1, check: look.id, choice: one!.id }
  await post(ready.http, `${job}/readings`, fields).expect(303)
  const kinds = async () =>
    (await ready.store.jobs.events(Number(job.slice('/jobs/'.length)))).map(({ kind }) => kind)
  return { ...ready, job, kinds }
}

/**
 * Answers as one fault would, each reading with one touch, until the page asks for a check once more;
 * null if it never does.
 */
async function walkedToDoubt(http: Http, cutSet: number): Promise<string | null> {
  const fault = faultOf(kase, cutSet)
  const job = await openJob(http, kase)
  for (;;) {
    const html = (await http.get(job).expect(200)).text
    if (html.includes(asking)) return job
    const form = /<form id="reading"[^>]* action="([^"#]+)#job"/.exec(html)
    if (form === null) return null
    const [version, check] = [valueIn(html, 'version'), valueIn(html, 'check')]
    const answer = fault.typical(check)
    const [typed = ''] = 'type' in answer ? answer.type.split(' ') : []
    const said: Record<string, string> =
      'type' in answer ? { typed, kept: typed } : { choice: answer.choose }
    await post(http, form[1]!, { version, check, ...said }).expect(303)
  }
}

async function doubtfulJob() {
  const ready = await readyApp()
  for (const [cutSet, { faults }] of kase.model.cutSets.entries()) {
    const job = faults.length === 1 ? await walkedToDoubt(ready.http, cutSet) : null
    if (job !== null) return { ...ready, job }
  }
  throw new Error('No fault of this case leads to a doubtful reading.')
}

/** What the page offers instead of the check on it. */
async function offered(http: Http, job: string): Promise<string> {
  const html = (await http.get(job).expect(200)).text
  return html.slice(html.indexOf('id="others"'))
}

/** Gives the same answer each time the page asks for that check once more; returns how often it did. */
async function askedOnceMore(http: Http, job: string, said: Record<string, string>) {
  const { text } = await http.get(job).expect(200)
  const doubtful = valueIn(text, 'check')
  for (let times = 0; ; times += 1) {
    const html = (await http.get(job).expect(200)).text
    const asks = html.includes(asking) && valueIn(html, 'check') === doubtful
    if (!asks || times === 10) return times
    const fields = { version: valueIn(html, 'version'), check: doubtful, take: 'yes' }
    await post(http, `${job}/takes`, { ...fields, ...said }).expect(303)
  }
}

describe('a check made once more', () => {
  it('is shown on request, says why, and joins the reading', async () => {
    const { http, job, kinds } = await lookedJob()
    const page = await http.get(`${job}?take=${look.id}`).expect(200)
    expect(textIn(page.text)).toContain(asking)
    expect(textIn(page.text)).toMatch(
      /About 1 time in \d+ it comes out like that by a slip of contact or hand alone/,
    )
    expect(page.text).toContain(`<form id="reading" method="post" action="${job}/takes#job"`)
    const fields = { version: 2, check: look.id, choice: other!.id, take: 'yes' }
    await post(http, `${job}/takes`, fields).expect(303)
    const says = `${one!.says}, then ${other!.says[0]!.toLowerCase()}${other!.says.slice(1)}`
    expect(textIn((await http.get(job)).text)).toContain(says)
    expect(await kinds()).toEqual(['opened', 'reading', 'take'])
  })

  it('keeps the page and the first reading where nothing was chosen', async () => {
    const { http, job, kinds } = await lookedJob()
    const fields = { version: 2, check: look.id, choice: 'perhaps', take: 'yes' }
    const answer = await post(http, `${job}/takes`, fields)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Choose one of the answers.')
    expect(textIn(answer.text)).toContain(asking)
    expect(await kinds()).toEqual(['opened', 'reading'])
  })

  it('is refused for what an owner remembers, which stays the same when asked again', async () => {
    const { http, job, kinds } = await lookedJob()
    const choice = question.answers![0]!.id
    await post(http, `${job}/readings`, { version: 2, check: question.id, choice }).expect(303)
    await http.get(`${job}?take=${question.id}`).expect(303)
    const answer = await post(http, `${job}/takes`, { version: 3, check: question.id, choice })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('correct the answer if it was misheard')
    expect(await kinds()).toEqual(['opened', 'reading', 'reading'])
  })

  it('is asked for by the tool where much hangs on one reading, until it is let stand', async () => {
    const { http, job } = await doubtfulJob()
    const html = (await http.get(job)).text
    const [version, check] = [valueIn(html, 'version'), valueIn(html, 'check')]
    expect(html).toContain(`action="${job}/acceptances#job"`)
    await post(http, `${job}/acceptances`, { version, check }).expect(303)
    const after = (await http.get(job)).text
    const asksAgain = after.includes(asking) && valueIn(after, 'check') === check
    expect(asksAgain).toBe(false)
    expect(await offered(http, job)).not.toContain(`?take=${check}`)
  })

  it('is not asked for again where the second take could not be had', async () => {
    const { http, job } = await doubtfulJob()
    expect(await askedOnceMore(http, job, { choice: 'could-not-tell' })).toBe(1)
    expect((await http.get(job)).text).toMatch(/<form id="reading"|class="box verdict"/)
  })

  it('is offered no more often than it can tell anything, whatever comes back', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const check = cards.find(({ measurand }) => measurand?.quantity.id === 'isolation')!.id
    await post(http, `${job}/readings`, { version: 1, check, typed: '20k' }).expect(303)
    // A leak to ground that the probe finds once and then no more.
    for (let takes = 1; takes < mostTakes; takes += 1) {
      expect(await offered(http, job)).toContain(`?take=${check}`)
      const touch = { version: takes + 1, check, typed: 'OL' }
      await post(http, `${job}/takes`, touch).expect(303)
    }
    expect(await offered(http, job)).not.toContain(`?take=${check}`)
  })

  it('cannot be let stand without a reading', async () => {
    const { http, job, kinds } = await lookedJob()
    await post(http, `${job}/withdrawals`, { version: 2, check: look.id }).expect(303)
    const answer = await post(http, `${job}/acceptances`, { version: 3, check: look.id })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('there is none to stand')
    expect(await kinds()).toEqual(['opened', 'reading', 'withdrawn'])
  })
})
