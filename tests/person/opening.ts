import type { Case } from '../../server/knowledge/case.ts'
import type { Http } from './app.ts'

export type Place = 'bench' | 'trailside'

/** Opens a job through its form, as it comes filled in but for the weather. */
export async function openJob(http: Http, { machine, complaint }: Case, place: Place, air: number) {
  const query = new URLSearchParams({ machine: machine.id, complaint: complaint.id, where: place })
  const { text } = await http.get(`/jobs/new?${query}`).expect(200)
  const form = { ...checked(text), air: String(Math.round(air)), note: '' }
  const opened = await http.post('/jobs').type('form').send(form).expect(303)
  return opened.headers.location!
}

/** What a browser would send of the radio buttons and boxes that come ticked. */
function checked(html: string): Record<string, string | string[]> {
  const fields: Record<string, string[]> = {}
  for (const [input] of html.matchAll(/<input type="(?:radio|checkbox)"[^>]* checked[^>]*>/g)) {
    const name = /name="([^"]+)"/.exec(input)![1]!
    const value = /value="([^"]+)"/.exec(input)![1]!
    fields[name] = [...(fields[name] ?? []), value]
  }
  return Object.fromEntries(
    Object.entries(fields).map(([name, values]) => [name, name === 'tools' ? values : values[0]!]),
  )
}

/** Holds the probes together and enters what the meter shows, as the page asks. */
export async function zeroLeads(http: Http, job: string, shown: string): Promise<void> {
  const { text } = await http.get(`${job}/meter`).expect(200)
  const version = /name="version" value="(\d+)"/.exec(text)![1]!
  const form = { version, meter: String(checked(text).meter), zero: shown }
  await http.post(`${job}/meter`).type('form').send(form).expect(303)
}
