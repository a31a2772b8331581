import type { Case } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { seedOf } from '../../server/practice/world/chance.ts'
import { shown } from '../../server/practice/world/display.ts'
import { seeded } from '../bench/random.ts'
import type { Http } from './app.ts'
import { askingAround, notToBeHad } from './borrowing.ts'
import { type Bench, make } from './making.ts'
import { openJob, type Place, zeroLeads } from './opening.ts'
import { type CheckOnPage, type JobPage, type RepairOnPage, readPage } from './page.ts'
import type { Incident, JobRecord } from './record.ts'
import { mended, repaired, tried } from './repairing.ts'
import { asksForTake, seenInWords } from './seen.ts'
import { send } from './sending.ts'
import { type FirstVerdict, judge, statedIn } from './verdict.ts'
import { type Climate, drawWorld } from './world/draw.ts'
import { allTogether } from './world/standing.ts'

/** Minutes to put something right by hand, to put all together, and to try it. */
const tryingOut = 2

/** After so many checks the person gives up. */
const patience = 60

/** One job, from the form that opens it to its end, and what was noted on the way. */
export async function workJob(
  http: Http,
  knowledge: Knowledge,
  kase: Case,
  seed: number,
  climate: Climate,
  place: Place,
): Promise<JobRecord> {
  const world = drawWorld(knowledge, kase, seed, climate)
  const job = await openJob(http, kase, place, world.weather.air)
  const standing = allTogether(kase.machine.outputs.map(({ id }) => id))
  const walk = new Walk(http, knowledge, kase, job, { world, standing, clock: 0 })
  const end = await walk.toTheEnd()
  return {
    seed,
    complaint: kase.complaint.id,
    machine: kase.machine.id,
    climate,
    place,
    hidden: world.faults.map(({ part, mode }) => `${part}.${mode}`),
    ...walk.firstVerdict,
    end,
    incidents: walk.incidents,
    said: walk.said,
  }
}

/** The person at one job. It goes from page to page and does what each says. */
class Walk {
  readonly incidents: Incident[] = []
  readonly said: string[] = []
  readonly #http: Http
  readonly #knowledge: Knowledge
  readonly #kase: Case
  readonly #job: string
  readonly #truth: readonly string[]
  readonly #takes = new Map<string, number>()
  readonly #followed = new Set<string>()
  #bench: Bench
  #checks = 0
  #minutes = 0
  #zeroed = false
  #first: FirstVerdict | null = null

  constructor(http: Http, knowledge: Knowledge, kase: Case, job: string, bench: Bench) {
    this.#http = http
    this.#knowledge = knowledge
    this.#kase = kase
    this.#job = job
    this.#bench = bench
    this.#truth = bench.world.faults.map(({ part }) => part)
  }

  get firstVerdict(): FirstVerdict {
    return this.#first ?? this.#noted(null, null)
  }

  async toTheEnd(): Promise<JobRecord['end']> {
    let address = this.#job
    for (;;) {
      const page = await this.#read(address)
      address = this.#job
      if (page.mend.length > 0 && (await this.#mends(page))) return 'mended'
      if (page.check !== null) {
        if (this.#checks >= patience) return 'gave up'
        address = await this.#make(page.check)
        continue
      }
      // Of a group, or outside the tree, the page names nobody; whoever does only what it says has nothing to repair.
      const isNamed = page.repair?.parts.some((part) => this.#kase.parts.has(part))
      if (isNamed && page.repair?.action.endsWith('/repairs')) {
        const end = await this.#repair(page, page.repair)
        if (end !== null) return end
        continue
      }
      const next = this.#wayOn(page)
      if (next === null) return this.#ended(page)
      address = next
    }
  }

  async #read(address: string): Promise<JobPage> {
    const { text } = await this.#http.get(address).expect(200)
    return readPage(text)
  }

  /** @returns where the person goes next */
  async #make(page: CheckOnPage): Promise<string> {
    const missing = notToBeHad(page, this.#bench.world)
    if (missing !== null) return this.#doesWithout(page, missing)
    if (await this.#zeroes(page)) return this.#job
    const take = (this.#takes.get(page.id) ?? 0) + 1
    this.#takes.set(page.id, take)
    this.#checks += 1
    this.#minutes += page.minutes
    const made = make(this.#knowledge, this.#kase, this.#bench, page, take)
    this.incidents.push(...made.incidents)
    this.#say(`${this.#checks}. ${page.standing}: ${page.title} [${page.id}]`)
    for (const setup of page.setups) this.#say(`     first: ${setup}`)
    this.#say(`   ${seenInWords(made.seen)}`)
    for (const { kind, says } of made.incidents) this.#say(`   ! ${kind}: ${says}`)
    const inVain = made.seen.kind === 'nothing' && take > 3
    if (inVain) this.incidents.push({ kind: 'asked in vain', check: page.id, says: page.title })
    const careful = () => make(this.#knowledge, this.#kase, this.#bench, page, take + 50, true).seen
    const version = await send(this.#http, page, made.seen, careful, inVain, this.#bench)
    this.#say(version)
    const clock = this.#bench.clock + page.minutes
    this.#bench = { ...this.#bench, standing: made.standing, clock }
    const again = take === 1 && asksForTake(page.steps, made.seen)
    return again ? `${this.#job}?take=${encodeURIComponent(page.id)}` : this.#job
  }

  async #doesWithout(page: CheckOnPage, missing: string): Promise<string> {
    this.#minutes += askingAround
    this.#bench = { ...this.#bench, clock: this.#bench.clock + askingAround }
    const seen = { kind: 'nothing', why: `there is no ${missing} to be had`, barred: true } as const
    this.#say(`   ${page.title}: ${seen.why}`)
    const skip = page.skip && { ...page.skip, reason: page.skip.noTool }
    this.#say(await send(this.#http, { ...page, skip }, seen, () => seen, false, this.#bench))
    return this.#job
  }

  /** Where the page asks for the leads, they are zeroed once, before anything is read. */
  async #zeroes({ words, steps, form }: CheckOnPage): Promise<boolean> {
    const asked = /Meter and leads:|in the field for the leads|first hold the probes together/.test(
      `${words} ${steps.join(' ')}`,
    )
    if (!asked || this.#zeroed || !form.isMeasured) return false
    this.#zeroed = true
    const { meter, person, seed } = this.#bench.world
    const read = shown(meter, 'resistance', person.leads, seeded(seedOf(seed, 'leads')))
    this.#say(`   leads together: ${read}`)
    await zeroLeads(this.#http, this.#job, read)
    return true
  }

  async #repair(page: JobPage, { action, parts }: RepairOnPage): Promise<JobRecord['end'] | null> {
    const isRight = parts.every((part) => this.#truth.includes(part))
    const stated = statedIn(page.verdict?.stamp ?? '')
    this.#say(`   verdict: ${page.verdict?.says} (${page.verdict?.stamp})`)
    this.#first ??= this.#noted(parts, stated)
    this.#bench = repaired(this.#bench, parts)
    await this.#post(action, { version: page.version, parts: parts.join('+'), choice: 'repaired' })
    const proof = await this.#read(this.#job)
    const steps = [...(page.verdict?.next ?? []).map(({ says }) => says), ...proof.repair!.steps]
    const { stillThere, standing, incidents } = tried(this.#knowledge, this.#bench, steps, isRight)
    this.incidents.push(...incidents)
    this.#bench = { ...this.#bench, standing }
    for (const { kind, says } of incidents) this.#say(`   ! ${kind}: ${says}`)
    this.#say(
      `   replaced: ${parts.join(', ')}; the complaint is ${stillThere ? 'still there' : 'gone'}`,
    )
    await this.#post(proof.repair!.action, {
      version: proof.version,
      parts: '',
      choice: stillThere ? 'still-there' : 'gone',
    })
    if (!stillThere) return 'mended'
    // A right name whose proof was spoilt has been counted: there is nothing left to find.
    return isRight && this.#bench.world.faults.length === 0 ? 'mended' : null
  }

  /** What the page has put right first is put right, and written down where that was it. */
  async #mends({ mend }: JobPage): Promise<boolean> {
    const [href] = mend
    if (href === undefined || this.#followed.has(mend.join())) return false
    this.#followed.add(mend.join())
    this.#minutes += tryingOut
    const named = mend.map((each) => new URL(each, 'http://job').searchParams.get('found')!)
    // What is no part of the tree is no fault of any world.
    const parts = named.filter((part) => this.#kase.parts.has(part))
    const cure = mended(this.#bench, parts)
    this.#say(`   put right at once: ${parts.join(', ')}; ${cure ? 'that was it' : 'no better'}`)
    if (cure === null) return false
    this.#bench = cure.bench
    this.#first ??= this.#noted([cure.part], null)
    const found = await this.#read(`${this.#job}?found=${encodeURIComponent(cure.part)}`)
    const written = { version: found.version, parts: cure.part, choice: 'repaired' }
    await this.#post(found.repair!.action, written)
    const proof = await this.#read(this.#job)
    await this.#post(proof.repair!.action, { version: proof.version, parts: '', choice: 'gone' })
    return true
  }

  /** The check that a verdict asks for, where it asks for one that has not been followed yet. */
  #wayOn({ verdict }: JobPage): string | null {
    const way = verdict?.next.find(
      ({ says, href }) => href !== null && !/Needs:|Not at this/.test(says),
    )
    if (!way?.href || this.#followed.has(way.href) || this.#followed.size > 8) return null
    this.#followed.add(way.href)
    this.#say(`   verdict: ${verdict!.says} Follows: ${way.says}`)
    return way.href
  }

  #ended({ verdict, repair }: JobPage): JobRecord['end'] {
    this.#say(`   verdict: ${verdict?.says ?? repair?.steps.join(' ')} (${verdict?.stamp})`)
    const isOutside = /none of the causes listed/.test(verdict?.stamp ?? '')
    if (!isOutside) return 'undecided'
    this.#first ??= this.#noted([], statedIn(verdict!.stamp))
    return 'outside'
  }

  #noted(named: readonly string[] | null, stated: number | null): FirstVerdict {
    const judged = judge(this.#knowledge, this.#kase, this.#truth, named)
    return { ...judged, named, stated, checks: this.#checks, minutes: this.#minutes }
  }

  #post(action: string, form: Record<string, string>) {
    return this.#http.post(action).type('form').send(form).expect(303)
  }

  #say(line: string): void {
    if (line !== '') this.said.push(line)
  }
}
