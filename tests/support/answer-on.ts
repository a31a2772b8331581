import type { Http } from './app.ts'
import type { Answer } from './hidden-fault.ts'
import { post } from './job.ts'
import { valueIn } from './page.ts'

/**
 * Fills in the form that stands on a job's page and sends it; what looks like a mistake is sent as it is
 * once more, as a person would who has read it again. Returns the check; null where nothing is asked.
 */
export async function answerOn(
  http: Http,
  page: string,
  typical: (check: string) => Answer,
): Promise<string | null> {
  const html = (await http.get(page).expect(200)).text
  const form = /<form id="reading"[^>]* action="([^"#]+)#job"/.exec(html)
  if (form === null) return null
  const [address, check] = [form[1]!, valueIn(html, 'check')]
  const answer = typical(check)
  const said: Record<string, string> =
    'type' in answer ? { typed: answer.type } : { choice: answer.choose }
  const asTake = html.includes('name="take"') && { take: 'yes' }
  const fields = { version: valueIn(html, 'version'), check, ...said, ...asTake }
  const sent = await post(http, address, fields)
  if (sent.status === 422 && 'type' in answer) {
    await post(http, address, { ...fields, kept: answer.type }).expect(303)
  } else if (sent.status !== 303) {
    throw new Error(`${check} was answered with ${JSON.stringify(answer)}: ${sent.status}`)
  }
  return check
}
