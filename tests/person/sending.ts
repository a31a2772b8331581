import type { Http } from './app.ts'
import type { Bench } from './making.ts'
import { type CheckOnPage, readPage } from './page.ts'
import type { Seen } from './seen.ts'
import { seenInWords } from './seen.ts'
import { celsiusOf } from './world/temperature.ts'

/** What the form calls running hot, °C. A hand tells whether a part is nearer to that than to the air. */
const runningHot = 90

/**
 * Sends what was seen as the form has it. What the page does not take it asks about: then the reading is made once
 * more, carefully, and sent, or sent again as it is where it stays.
 *
 * @returns what the page answered, for the log; empty where it simply took it
 */
export async function send(
  http: Http,
  page: CheckOnPage,
  seen: Seen,
  careful: () => Seen,
  inVain: boolean,
  bench: Bench,
): Promise<string> {
  if (inVain && page.accept !== null) {
    const { version, check } = page.form.fields
    await http.post(page.accept).type('form').send({ version, check }).expect(303)
    return '   lets it stand'
  }
  if (seen.kind === 'nothing' && seen.barred && page.skip !== null) {
    const { version, check } = page.form.fields
    const { action, reason } = page.skip
    await http.post(action).type('form').send({ version, check, reason }).expect(303)
    return `   skips it: ${reason}`
  }
  const answered = await post(http, page, seen, bench)
  if (answered.status === 303) return ''
  const again = readPage(answered.text).check
  if (answered.status !== 422 || again === null) {
    throw new Error(`${page.id}: ${seenInWords(seen)} was answered with ${answered.status}`)
  }
  const second = careful()
  const asked = `   page: ${again.form.problem} Then: ${seenInWords(second)}`
  const taken = await post(http, again, second, bench)
  if (taken.status === 303) return asked
  // It stays so: sent as it is, it is taken, or else there is no way to put it into the form.
  const third = readPage(taken.text).check!
  const last = await post(http, third, second, bench)
  if (last.status === 303) return `${asked}; sent as it is`
  const gone = await post(
    http,
    third,
    { kind: 'nothing', why: 'cannot be entered', barred: false },
    bench,
  )
  if (gone.status === 303) return `${asked}; ${third.form.problem} Could not be entered.`
  throw new Error(`${page.id}: ${seenInWords(second)} is answered with ${gone.status}`)
}

function post(http: Http, { id, form }: CheckOnPage, seen: Seen, bench: Bench) {
  const fields = { ...form.fields, ...warmth(form.warmths, id, bench) }
  const answer =
    seen.kind === 'typed'
      ? { typed: seen.text }
      : { choice: seen.kind === 'answer' ? seen.id : 'could-not-tell' }
  return http
    .post(form.action)
    .type('form')
    .send({ ...fields, ...answer })
}

/** The form asks how warm the part is: as it comes, unless the hand knows better. */
function warmth(choices: readonly string[], check: string, { world, standing, clock }: Bench) {
  const part = check.split('.')[1] ?? ''
  if (!choices.includes('running hot') || standing.hotAt === null) return {}
  if (!world.machine.parts.some(({ id }) => id === part)) return {}
  const site = { world, standing, clock, random: () => 0, doing: {} }
  const celsius = celsiusOf(site, part)
  const isHot = Math.abs(celsius - runningHot) < Math.abs(celsius - world.weather.air)
  return isHot ? { warmth: 'running hot' } : {}
}
