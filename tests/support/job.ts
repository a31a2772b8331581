import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { type Http, shippedKnowledge } from './app.ts'

/** The form that opens a job, filled in as it can be sent: at the bench, with every tool. */
export function openForm(
  kase: { readonly machine: { readonly id: string }; readonly complaint: { readonly id: string } },
  changes: Record<string, string | string[]> = {},
): Record<string, string | string[]> {
  const knowledge = shippedKnowledge()
  return {
    job: `${kase.machine.id}/${kase.complaint.id}`,
    where: 'bench',
    air: '20',
    engine: 'cold',
    set: 'bench',
    'tools-bench': Object.keys(knowledge.tools.tools),
    meter: [...knowledge.meters.keys()][0]!,
    afloat: 'no',
    note: '',
    ...changes,
  }
}

/** The tools that the form ticks by itself for a job at the bench. */
export function usualAtTheBench(): Record<'tools-bench', string[]> {
  const tools = Object.entries(shippedKnowledge().tools.tools)
  return { 'tools-bench': tools.flatMap(([id, { usual }]) => (usual.includes('bench') ? id : [])) }
}

/** Opens a job as a browser would, and returns its address. */
export async function openJob(
  http: Http,
  kase: Case,
  changes: Record<string, string | string[]> = {},
): Promise<string> {
  const answer = await http.post('/jobs').type('form').send(openForm(kase, changes)).expect(303)
  return answer.headers.location!
}

/** Posts a form about one check to one of a job's nouns. */
export function post(
  http: Http,
  address: string,
  fields: Record<string, string | number | string[]>,
) {
  return http.post(address).type('form').send(fields)
}

/** The first check of the case whose reading is a resistance, and the first that has answers. */
export const measuredCheck = ({ checks }: Case): CheckCard => found(resistances(checks)[0])

/** The first whose reading is a resistance of what is not moved meanwhile: its lowest touch counts. */
export const steadyCheck = ({ checks }: Case): CheckCard =>
  found(resistances(checks).find(({ measurand }) => !measurand?.moved))

const resistances = (checks: Case['checks']): CheckCard[] =>
  [...checks.values()].filter(({ measurand }) => measurand?.quantity.id === 'resistance')

export function askedCheck({ checks }: Case): CheckCard {
  return found([...checks.values()].find(({ answers }) => answers !== undefined))
}

function found(card: CheckCard | undefined): CheckCard {
  if (card === undefined) throw new Error('The shipped trees have no check of that kind.')
  return card
}
