import type { Case } from '../../server/knowledge/case.ts'
import { allCases, type Http } from './app.ts'
import { openForm, post } from './job.ts'
import { textIn } from './page.ts'

/** A shipped case. */
export const caseOf = (machine: string, complaint: string): Case =>
  allCases().find((each) => each.complaint.id === complaint && each.machine.id === machine)!

/** A job whose owner is on the phone with this kit. */
export async function onPhone(
  http: Http,
  kase: Case,
  kit: string[] = ['plug-wrench', 'light'],
  more: Record<string, string> = {},
): Promise<string> {
  const owner = { who: 'owner', 'kit-set': 'along', 'kit-along': kit, air: '12', ...more }
  const { headers } = await http.post('/jobs').type('form').send(openForm(kase, owner)).expect(303)
  return headers.location!
}

/** Somebody at the bench takes it over. */
export async function takeOver(http: Http, job: string, version: number) {
  await post(http, `${job}/conditions`, {
    ...{ version, who: 'self', where: 'bench', engine: 'cold', air: '20' },
    ...{ set: 'hands', note: '' },
  }).expect(303)
}

/** The words of a page. */
export const wordsOn = async (http: Http, address: string): Promise<string> =>
  textIn((await http.get(address).expect(200)).text)
