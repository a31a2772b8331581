import { describe, expect, it } from 'vitest'
import { answerOn } from '../support/answer-on.ts'
import { allCases, type Http, readyApp } from '../support/app.ts'
import { emptyFolder } from '../support/folder.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { openForm, openJob, post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(({ complaint }) => complaint.id === 'no-spark')!
const other = allCases().find(({ machine }) => machine.id !== kase.machine.id)!

/** Numbers of the jobs on a page of the list, in its order. */
async function listed(http: Http, query = ''): Promise<number[]> {
  const { text } = await http.get(`/jobs${query}`).expect(200)
  const jobs = addressesIn(text).flatMap((address) => /^\/jobs\/(\d+)$/.exec(address)?.[1] ?? [])
  return jobs.map(Number)
}

/** Follows the proposals to the verdict, writes the repair down, and says what came of it. */
async function repaired(http: Http, job: string): Promise<void> {
  const fault = hiddenFault(kase)
  while ((await answerOn(http, job, fault.typical)) !== null);
  const { text } = await http.get(job).expect(200)
  const [version, parts] = [valueIn(text, 'version'), valueIn(text, 'parts')]
  await post(http, `${job}/repairs`, { version, parts }).expect(303)
}

async function proved(http: Http, job: string, choice: 'gone' | 'still-there'): Promise<void> {
  const version = valueIn((await http.get(job)).text, 'version')
  await post(http, `${job}/proofs`, { version, choice }).expect(303)
}

describe('the list of jobs', () => {
  it('is searched by machine, complaint, note and number, all words at once', async () => {
    const { http } = await readyApp()
    const note = 'Ångström’s red_one, 100 %'
    await post(http, '/jobs', openForm(kase, { note })).expect(303)
    await openJob(http, other)
    expect(await listed(http)).toEqual([2, 1])
    expect(await listed(http, `?find=${kase.machine.name.split(' ')[0]}`)).toEqual([1])
    expect(await listed(http, '?find=angstrom+RED')).toEqual([1])
    expect(await listed(http, '?find=0002')).toEqual([2])
    expect(await listed(http, '?find=red+zebra')).toEqual([])
    expect(await listed(http, `?find=${encodeURIComponent(kase.complaint.title)}`)).toEqual([1])
  })

  it('looks in one field only where that is asked for', async () => {
    const { http } = await readyApp()
    await post(http, '/jobs', openForm(other, { note: kase.machine.name })).expect(303)
    await openJob(http, kase)
    const find = encodeURIComponent(kase.machine.name)
    expect(await listed(http, `?find=${find}`)).toEqual([2, 1])
    expect(await listed(http, `?find=${find}&in=machine`)).toEqual([2])
    expect(await listed(http, `?find=${find}&in=note`)).toEqual([1])
    expect(await listed(http, `?find=${find}&in=nowhere`)).toEqual([2, 1])
  })

  it('says what a job came to, finds it by the part, and by whether it is done', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await openJob(http, other)
    const part = encodeURIComponent(hiddenFault(kase).part)
    expect(textIn((await http.get('/jobs')).text)).toContain('Just opened.')
    await repaired(http, job)
    const named = textIn((await http.get(`/jobs?find=${part}&in=part`)).text)
    expect(named).toContain(`Repaired: ${hiddenFault(kase).part}. Not proved yet.`)
    expect(await listed(http, '?state=closed')).toEqual([])
    await proved(http, job, 'gone')
    expect(await listed(http, '?state=closed')).toEqual([1])
    expect(await listed(http, '?state=open')).toEqual([2])
    const done = textIn((await http.get(`/jobs?find=${part}&in=part`)).text)
    expect(done).toMatch(/Proved Repaired: .*\. Proved \d+ \w+ \d{4}/)
  })

  it('walks on where the complaint is still there', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await repaired(http, job)
    await proved(http, job, 'still-there')
    expect(await listed(http, '?state=open')).toEqual([1])
    expect(textIn((await http.get('/jobs')).text)).toContain('Still there after')
  })

  it('has pages, and every job is on one of them', async () => {
    const { http } = await readyApp()
    for (let count = 1; count <= 53; count += 1) await openJob(http, other)
    const seen: number[] = []
    let address: string | undefined = '/jobs'
    for (let pages = 0; address !== undefined; pages += 1) {
      expect(pages).toBeLessThan(3)
      const text: string = (await http.get(address).expect(200)).text
      seen.push(...(await listed(http, address.slice('/jobs'.length))))
      address = /<a class="way" href="([^"]+)" rel="next"/.exec(text)?.[1]
    }
    expect(seen).toEqual(Array.from({ length: 53 }, (_, i) => 53 - i))
    expect(await listed(http, '?page=99')).toEqual([3, 2, 1])
    expect(await listed(http, '?page=-1')).toEqual(seen.slice(0, 25))
  })

  it.each([
    ['marks alone', '??', 'Write a word or a number to find jobs by.'],
    ['a page', 'x'.repeat(101), 'Keep the search under 100 characters.'],
    ['a sentence', 'a b c d e f g h i', 'Search for at most 8 words at a time.'],
  ])('says why it cannot search for %s, and keeps it', async (_, find, sentence) => {
    const { http } = await readyApp()
    await openJob(http, other)
    const answer = await http.get(`/jobs?find=${encodeURIComponent(find)}`)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(sentence)
    expect(valueIn(answer.text, 'find')).toBe(find)
  })

  it('sends a script the jobs alone', async () => {
    const { http } = await readyApp()
    await openJob(http, other)
    const { text } = await http.get('/jobs?find=1').set('HX-Request-Type', 'partial')
    expect(text).not.toMatch(/<html|name="find"/)
    expect(addressesIn(text)).toContain('/jobs/1')
  })

  it('catches up with jobs from before there were summaries', async () => {
    const data = emptyFolder()
    const before = await readyApp({ data })
    const conditions = { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'hand' }
    const head = { machine: kase.machine.id, complaint: kase.complaint.id, note: 'the old one' }
    const at = new Date(2031, 4, 7)
    await before.store.jobs.open(head, { kind: 'opened', body: {}, at })
    await before.store.jobs.open(head, { kind: 'opened', body: { ...head, conditions }, at })
    expect(await listed(before.http, '?find=old')).toEqual([])
    await before.app.close()
    await before.store.close()
    const { http } = await readyApp({ data })
    // The first is damaged, and keeps no other out.
    await expect.poll(() => listed(http, '?find=old')).toEqual([2])
    expect(await listed(http)).toEqual([2, 1])
  })
})
