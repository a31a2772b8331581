import type { Case } from '../../server/knowledge/case.ts'
import type { HiddenFault } from '../support/hidden-fault.ts'

/** Not compressed: that is the same work for any page of that size. */
const headers = { 'accept-encoding': 'identity' }

/** A job that one user has in front of them. */
export interface OpenJob {
  readonly address: string
  readonly page: string
}

/** Opens a job on a case, with the form as it comes, and looks at it. */
export async function openedJob(origin: string, { machine, complaint }: Case): Promise<OpenJob> {
  const query = new URLSearchParams({ machine: machine.id, complaint: complaint.id })
  const blank = await (await fetch(`${origin}/jobs/new?${query}`)).text()
  const form = new URLSearchParams()
  for (const [tag] of blank.matchAll(/<input[^>]*>/g)) {
    const { name, value, type } = attributes(tag)
    const on = type === 'checkbox' || type === 'radio' ? / checked/.test(tag) : true
    if (name && on) form.append(name, value ?? 'on')
  }
  for (const [, name, options] of blank.matchAll(
    /<select[^>]* name="([^"]+)"[^>]*>(.*?)<\/select>/gs,
  )) {
    form.append(name!, /<option value="([^"]*)" selected/.exec(options!)?.[1] ?? '')
  }
  const answer = await fetch(`${origin}/jobs`, { method: 'POST', body: form, redirect: 'manual' })
  const place = answer.headers.get('location')
  if (place === null) throw new Error(`the job was not opened: ${answer.status}`)
  const address = new URL(place, origin).href
  return { address, page: await (await fetch(address, { headers })).text() }
}

/** A reading that was posted, until the whole new page was there. */
export interface Posting {
  readonly milliseconds: number
  /** Of the page. */
  readonly bytes: number
}

/** Follows the proposals of a job to the verdict, each answered as the fault typically shows, as one user would. */
export async function postings(job: OpenJob, fault: HiddenFault): Promise<Posting[]> {
  const made: Posting[] = []
  let { page } = job
  for (;;) {
    const form = nextForm(page, fault)
    if (form === null) return made
    const began = performance.now()
    const sent = { method: 'POST', body: form.fields, headers }
    const answer = await fetch(new URL(form.action, job.address), sent)
    page = await answer.text()
    // A reading that looks like a mistake is asked for once more, and taken then.
    if (answer.status !== 200 && answer.status !== 422) {
      throw new Error(`a reading was answered with ${answer.status}`)
    }
    made.push({ milliseconds: performance.now() - began, bytes: Buffer.byteLength(page) })
  }
}

function nextForm(page: string, fault: HiddenFault) {
  const form = /<form id="reading"[^>]*action="([^"#]*)#job"[^>]*>([\s\S]*?)<\/form>/.exec(page)
  if (form === null) return null
  const fields = new URLSearchParams()
  for (const [tag] of form[2]!.matchAll(/<input[^>]*type="hidden"[^>]*>/g)) {
    const { name, value } = attributes(tag)
    fields.set(name!, value ?? '')
  }
  const answer = fault.typical(fields.get('check')!)
  if ('choose' in answer) fields.set('choice', answer.choose)
  else fields.set('typed', answer.type)
  return { action: form[1]!, fields }
}

function attributes(tag: string): Record<string, string> {
  return Object.fromEntries([...tag.matchAll(/([a-z-]+)="([^"]*)"/g)].map((m) => [m[1]!, m[2]!]))
}
