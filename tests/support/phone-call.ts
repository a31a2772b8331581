import type { Case } from '../../server/knowledge/case.ts'
import { seeded } from '../bench/random.ts'
import type { Http } from './app.ts'
import { Owner, type Said } from './hearing.ts'
import { onPhone } from './on-phone.ts'
import { addressesIn, decoded, textIn } from './page.ts'

/** What its owner has there: all that opens a check or something to put right, but for a meter. */
const kit = [
  ...['plug-wrench', 'spare-plug', 'old-plugs', 'small-tools', 'tape', 'water', 'light'],
  ...['partner', 'fresh-fuel', 'bulb'],
]

/** Pages of one call at most. */
const longest = 25

const together = { plugsOut: false, capsOff: false, covered: false, tankOpen: false }

interface Form {
  readonly action: string
  readonly fields: Readonly<Record<string, string>>
  readonly choices: readonly { readonly name: string; readonly value: string }[]
  readonly typed: boolean
}

interface Page {
  readonly text: string
  readonly lines: readonly Said[]
  readonly forms: readonly Form[]
}

/**
 * One call by phone, drawn by its seed: an owner who does to the letter what is said, answers anything, and is broken off
 * now and then, at any sentence, by a refusal, a dead line, an answer taken back or a try to get home.
 *
 * @returns what made no sense to them, a sentence each
 */
export async function phoneCall(http: Http, kase: Case, seed: number): Promise<string[]> {
  const random = seeded(seed)
  const job = await onPhone(http, kase, kit, random() < 0.5 ? { afloat: 'yes' } : {})
  return new Call(http, kase, job, seed, random).follow()
}

class Call {
  readonly #owner: Owner
  readonly #trail: string[] = []
  /** What is started on this page may run on. */
  #runs = false

  readonly #http: Http
  readonly #kase: Case
  readonly #job: string
  readonly #seed: number
  readonly #random: () => number

  constructor(http: Http, kase: Case, job: string, seed: number, random: () => number) {
    this.#owner = new Owner(kase)
    this.#http = http
    this.#kase = kase
    this.#job = job
    this.#seed = seed
    this.#random = random
  }

  async follow(): Promise<string[]> {
    for (let page = 0; page < longest && this.#owner.amiss.length === 0; page += 1) {
      this.#hear((await this.#pageAt(this.#job)).lines.filter(({ label }) => label === 'again'))
      if (!(await this.#turnOver(await this.#pageAt(`${this.#job}?line=99`)))) break
    }
    return this.#owner.amiss
  }

  /** Whether there is a page after it. */
  async #turnOver(page: Page): Promise<boolean> {
    const lines = page.lines.filter(({ label }) => label !== 'again')
    const reading = page.forms.find(
      ({ action, choices, typed }) =>
        /\/(readings|takes)$/.test(action) && (choices.length > 1 || typed),
    )
    this.#runs = this.#mayRun(reading?.fields.check)
    if (reading) return this.#check({ ...page, lines }, reading)
    const deeds = page.forms.filter(
      ({ action, fields }) =>
        /\/(mendings|repairs)$/.test(action) && Object.keys(fields).length > 1,
    )
    if (deeds.length > 0) return this.#mend({ ...page, lines }, deeds)
    this.#note('end')
    this.#hear(lines)
    return this.#goHome(99)
  }

  /** Some check of the case has it run, and so does this one, or a trial. */
  #mayRun(check: string | undefined): boolean {
    const { checks } = this.#kase
    const some = [...checks.values()].some(({ engine }) => engine === 'running')
    return some && (check === undefined || checks.get(check)?.engine === 'running')
  }

  async #check(page: Page, form: Form): Promise<boolean> {
    const id = form.fields.check!
    const half = this.#somewhere(page.lines)
    const does = this.#random()
    if (does < 0.14) return this.#leave(`skip ${id}`, page, half, /\/(skips|acceptances)$/)
    if (does < 0.22) return this.#leave(`cut ${id}`, page, half, /\/cut-offs$/)
    if (does < 0.3 && (await this.#goHome(half))) return true
    if (does < 0.38 && (await this.#takeBack(page, half))) return true
    this.#note(id)
    const ready = page.lines.findLastIndex(({ label }) =>
      ['put back first', 'make ready'].includes(label),
    )
    const first = page.lines.findIndex(
      ({ label }, i) => i > ready && ['do', 'ask', 'name it'].includes(label),
    )
    page.lines.forEach((line, i) => {
      if (i === first) this.#expectFor(id)
      this.#owner.hear(line, this.#where, this.#runs)
    })
    const answer = form.typed ? 'could-not-tell' : this.#oneOf(form.choices).value
    this.#note(answer)
    await this.#send(form, { choice: answer })
    return true
  }

  /** What a check takes to be out or in once all was made ready for it. */
  #expectFor(id: string): void {
    const card = this.#kase.checks.get(id)!
    if (card.asked) return
    const needs = card.setups.map((setup) => setup.id)
    if (needs.includes('plugs-out-grounded')) this.#owner.expect({ plugsOut: true }, this.#where)
    else if (card.forbids.some((setup) => setup.id === 'plugs-out-grounded')) {
      const { capsOff, ...others } = together
      const isOnCaps = needs.includes('caps-grounded') || needs.includes('tester-fitted')
      this.#owner.expect(isOnCaps ? others : together, this.#where)
    }
  }

  async #mend(page: Page, deeds: readonly Form[]): Promise<boolean> {
    const half = this.#somewhere(page.lines)
    const does = this.#random()
    const came = (choice: string) => deeds.find(({ fields }) => fields.choice === choice)
    const leave = came('not-done')
    if (does < 0.35 && leave) {
      this.#note(`leave ${leave.fields.of} at ${half}`)
      this.#breakOff(page.lines.slice(0, half))
      await this.#send(leave)
      return true
    }
    if (does < 0.45 && (await this.#goHome(half))) return true
    if (does < 0.5 && page.forms.some(({ action }) => action.endsWith('/cut-offs'))) {
      return this.#leave('cut while mending', page, half, /\/cut-offs$/)
    }
    this.#note('mend')
    this.#hearToTheStart(page.lines)
    const usual = came('still-there') ?? came('done')
    await this.#send(does < 0.9 && usual ? usual : this.#oneOf(deeds))
    return true
  }

  /** Getting home in the middle of it: a way is told, and left half done, in vain, or it runs and they ring again. */
  async #goHome(heard: number): Promise<boolean> {
    const here = await this.#pageAt(`${this.#job}?line=${heard}`)
    const home = linkIn(here.text, /\/home/)
    if (home === undefined) return false
    if (heard < 99) this.#breakOff(here.lines.slice(0, heard))
    const { text } = await this.#http.get(home).expect(200)
    const [, stop] = text.match(/<p class="say">([^<]+)/) ?? []
    if (stop) this.#hear([{ label: 'do', says: stop }])
    const ways = [...text.matchAll(/href="([^"]*[?&]way=[^"]*)"/g)].map(([, way]) => way!)
    if (ways.length === 0) return false
    const way = decoded(this.#oneOf(ways))
    const page = await this.#pageAt(`${way}&line=99`)
    const half = this.#somewhere(page.lines)
    this.#note(way.slice(way.indexOf('way=')))
    if (this.#random() < 0.35) {
      const { forms } = await this.#pageAt(`${way}&line=${half}`)
      this.#note(`left at ${half}`)
      this.#breakOff(page.lines.slice(0, half))
      const left = forms.find(({ choices }) => choices.some(({ value }) => value === 'broken-off'))
      if (left) await this.#send(left, { choice: 'broken-off' })
      return true
    }
    this.#hearToTheStart(page.lines)
    const tried = page.forms.find(({ action }) => action.endsWith('/tries'))!
    const choice = this.#random() < 0.3 ? 'helped' : 'no-help'
    this.#note(choice)
    await this.#send(tried, { choice })
    if (choice === 'helped') {
      const going = await this.#pageAt(`${this.#job}?line=99`)
      this.#hear(going.lines)
      const stopped = going.forms.find(({ action }) => action.endsWith('/cut-offs'))
      if (stopped) await this.#send(stopped)
    }
    return true
  }

  async #takeBack(page: Page, half: number): Promise<boolean> {
    const link = linkIn(page.text, /[?&]correct=/)
    if (link === undefined) return false
    this.#note(`take back at ${half}`)
    this.#breakOff(page.lines.slice(0, half))
    const { forms, lines } = await this.#pageAt(`${link}&line=99`)
    this.#hear(lines)
    const form = forms.find(({ action }) => action.endsWith('/corrections'))
    if (form && form.choices.length > 0) {
      await this.#send(form, { choice: this.#oneOf(form.choices).value })
    }
    return true
  }

  /** Out of it at one of its sentences. */
  async #leave(what: string, { lines }: Page, half: number, by: RegExp): Promise<boolean> {
    this.#note(`${what} at ${half}`)
    this.#breakOff(lines.slice(0, half))
    const { forms } = await this.#pageAt(`${this.#job}?line=${half}`)
    const form = forms.find(({ action }) => by.test(action))!
    const reason = form.choices.length > 0 ? this.#oneOf(form.choices) : undefined
    await this.#send(form, reason && { [reason.name]: reason.value })
    return true
  }

  #hear(lines: readonly Said[]): void {
    for (const line of lines) this.#owner.hear(line, this.#where, this.#runs)
  }

  /** They hear so much, and then something else comes up. */
  #breakOff(lines: readonly Said[]): void {
    this.#hear(lines)
    this.#owner.brokenOff()
  }

  /** All is together where it is set for work to be tried. */
  #hearToTheStart(lines: readonly Said[]): void {
    for (const line of lines) {
      const isSet = ['try it', 'do'].includes(line.label) && /set it for work/i.test(line.says)
      if (isSet) this.#owner.expect(together, this.#where)
      this.#owner.hear(line, this.#where, this.#runs)
    }
  }

  async #send(form: Form, more: Readonly<Record<string, string>> = {}): Promise<void> {
    const sent = { ...form.fields, ...more }
    await this.#http.post(form.action).type('form').send(sent).expect(303)
  }

  async #pageAt(address: string): Promise<Page> {
    const { text } = await this.#http.get(address).expect(200)
    const again = text.match(/<section class="box again".*?<\/section>/s)?.[0] ?? ''
    const lines = [
      ...[...again.matchAll(/<li>(.*?)<\/li>/gs)].map(([, says]) => ['again', says!] as const),
      ...[...text.matchAll(/<li><b>([^<]+):<\/b> ([^<]+)/g)].map(
        ([, label, says]) => [label!, says!] as const,
      ),
    ].map(([label, says]) => ({ label, says: textIn(says) }))
    return { text, lines, forms: formsIn(text) }
  }

  #somewhere(lines: readonly Said[]): number {
    return 1 + Math.floor(this.#random() * Math.max(1, lines.length))
  }

  #oneOf<T>(items: readonly T[]): T {
    return items[Math.floor(this.#random() * items.length)]!
  }

  #note(what: string): void {
    this.#trail.push(what)
  }

  get #where(): string {
    const { machine, complaint } = this.#kase
    return `${machine.id} ${complaint.id}, seed ${this.#seed}: ${this.#trail.slice(-4).join(' > ')}`
  }
}

/** The forms of a page: where each leads, its hidden fields, and its buttons that send something. */
function formsIn(text: string): Form[] {
  return [...text.matchAll(/<form\b[^>]*\baction="([^"#]*)[^>]*>(.*?)<\/form>/gs)].map(
    ([, action, inner]) => ({
      action: decoded(action!),
      fields: Object.fromEntries(
        [...inner!.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)].map(
          ([, name, value]) => [name!, decoded(value!)],
        ),
      ),
      choices: [...inner!.matchAll(/<button[^>]*name="(choice|reason)" value="([^"]*)"/g)].map(
        ([, name, value]) => ({ name: name!, value: decoded(value!) }),
      ),
      typed: /name="typed"/.test(inner!),
    }),
  )
}

const linkIn = (text: string, to: RegExp): string | undefined =>
  addressesIn(text).find((address) => to.test(address))
