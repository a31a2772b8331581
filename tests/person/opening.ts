import type { Case } from '../../server/knowledge/case.ts'
import type { Http } from './app.ts'

export type Place = 'bench' | 'trailside'

/** Opens a job through its form, as it comes filled in but for the weather. */
export async function openJob(http: Http, { machine, complaint }: Case, place: Place, air: number) {
  const query = new URLSearchParams({ machine: machine.id, complaint: complaint.id, where: place })
  const { text } = await http.get(`/jobs/new?${query}`).expect(200)
  const afloat = text.includes('name="afloat"') && { afloat: 'no' }
  const form = { ...filledIn(text), ...afloat, air: String(Math.round(air)), note: '' }
  const opened = await http.post('/jobs').type('form').send(form).expect(303)
  return opened.headers.location!
}

/** What a browser would send of the fields that come filled in, ticked or chosen. */
function filledIn(html: string): Record<string, string[]> {
  const fields: Record<string, string[]> = {}
  const add = (name: string, value: string) => {
    fields[name] = [...(fields[name] ?? []), value]
  }
  for (const [input] of html.matchAll(
    /<input type="(?:hidden"|radio"[^>]* checked|checkbox"[^>]* checked)[^>]*>/g,
  )) {
    add(/name="([^"]+)"/.exec(input)![1]!, /value="([^"]*)"/.exec(input)![1]!)
  }
  for (const [, name, options] of html.matchAll(
    /<select[^>]* name="([^"]+)"[^>]*>(.*?)<\/select>/gs,
  )) {
    const chosen = /<option value="([^"]*)" selected/.exec(options!)
    if (chosen) add(name!, chosen[1]!)
  }
  return fields
}

/** Holds the probes together and enters what the meter shows, as the page asks. */
export async function zeroLeads(http: Http, job: string, shown: string): Promise<void> {
  const { text } = await http.get(`${job}/meter`).expect(200)
  const version = /name="version" value="(\d+)"/.exec(text)![1]!
  const form = { version, meter: filledIn(text).meter![0]!, zero: shown }
  await http.post(`${job}/meter`).type('form').send(form).expect(303)
}
