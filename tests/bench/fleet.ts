import { likeliest } from '../../server/diagnosis/belief/likeliest.ts'
import { furtherTake, withTake } from '../../server/diagnosis/belief/takes.ts'
import { askedTogether, broughtIn } from '../../server/diagnosis/model/asking.ts'
import type { Check, Evidence, Model } from '../../server/diagnosis/model/model.ts'
import { minutesOf, type Stands, standsAfter, wayTo } from '../../server/diagnosis/model/stands.ts'
import type { Step } from '../../server/diagnosis/model/walk.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { drawn, seeded, shuffled } from './random.ts'
import { type World, worlds } from './worlds.ts'

/** What a way of walking came to, over all its walks. */
export interface Tally {
  readonly walks: number
  /** Wrench minutes with the way there and back, all walks together. */
  readonly minutes: number
  readonly checks: number
  /** The part that had failed was named, or "outside this tree" said where that was so. */
  readonly right: number
  readonly wrong: number
  /** Ended without a name. */
  readonly undecided: number
  /** Minutes that parts named in vain would have cost. */
  readonly wasted: number
  /** Names that were given: with what chance, and whether they were right. */
  readonly named: readonly Named[]
}

export interface Named {
  readonly stated: number
  readonly right: boolean
}

export const ways = ['tool', 'chart', 'paper', 'random'] as const
export type Way = (typeof ways)[number]

/** How many shuffled orders stand for "a random order". */
const randomOrders = 8

/**
 * Simulated jobs of one complaint on one machine. Each draws what has failed by its base rate and answers
 * every check by its table of chances, in which errors of contact and plain slips are; the three ways
 * meet the same failures and, check by check, the same answers. The tool, the chart and the random order
 * stop by the tool's verdict, judged by the checks that their way has: the chart does not go on for a
 * check that is not on it. The chart on paper has no tool beside it; see `followedOnPaper`.
 *
 * @param world how checks are answered; by default as the tool's own tables say
 */
export function fleet(
  kase: Case,
  walks: number,
  seed: number,
  asked: readonly Way[] = ways,
  world: World = worlds['as the tables say']!,
): Record<Way, Tally> {
  const model = atTheBench(kase)
  // Each case draws its own machines, or one odd draw would be odd for all of them.
  const random = seeded(hash(`${kase.complaint.id} ${kase.machine.id}`, seed))
  const orders = Array.from({ length: randomOrders }, () => shuffled(model.checks, random))
  const fixed = withoutRepeats(model)
  const truly = world(model)
  const walkers: Record<Exclude<Way, 'paper'>, Walker[]> = {
    tool: [new Walker(model, truly, null)],
    chart: [new Walker(fixed, truly, chartOrder({ ...kase, model }))],
    random: orders.map((order) => new Walker(fixed, truly, order)),
  }
  const tallies = { tool: none, chart: none, paper: none, random: none }
  for (let w = 0; w < walks; w += 1) {
    const truth = drawn(
      model.cutSets.map(({ prior }) => prior),
      random,
    )
    const machine = Math.floor(random() * 2 ** 32)
    for (const way of asked) {
      if (way === 'paper') {
        tallies.paper = added(
          tallies.paper,
          model,
          truth,
          followedOnPaper(kase, truly, truth, machine),
        )
        continue
      }
      const walker = walkers[way][w % walkers[way].length]!
      tallies[way] = added(tallies[way], model, truth, walker.follow(truth, machine))
    }
  }
  return tallies
}

/** Whoever brought it in goes again, as on a job at the bench: to ask them later takes its minutes, whatever the order. */
const atTheBench = ({ model, checks }: Case): Model =>
  askedTogether(
    model,
    (check) => checks.get(check)?.asked === true,
    shippedKnowledge().owner.gone.minutes,
  )

/** A fixed order makes each check once. */
function withoutRepeats(model: Model): Model {
  return { ...model, checks: model.checks.map(({ slips: _, ...check }) => check) }
}

/** The checks of the complaint's chart, in its order; all checks in file order where it has none. */
export function chartOrder({ complaint, model }: Case): Check[] {
  const kindOf = ({ id }: Check) => id.split('.')[0]!
  const chart = complaint.chart ?? [...new Set(model.checks.map(kindOf))]
  return chart.flatMap((kind) => model.checks.filter((check) => kindOf(check) === kind))
}

/**
 * The chart as one follows it on paper: one check after the other, and the first part that reads as a
 * good one does not is the part that gets the blame. Undecided at its end.
 */
function followedOnPaper(kase: Case, truly: Model, truth: number, machine: number): Walked {
  const { model } = kase
  const answers = byName(truly)
  const nothing = model.cutSets.findIndex(({ parts }) => parts.length === 0)
  const bench = new Bench(model)
  let checks = 0
  for (const check of chartOrder(kase)) {
    checks += 1
    bench.make(check)
    const outcome = drawn(
      answers.get(check.id)!.chances[truth]!,
      seeded(hash(`${check.id} 1`, machine)),
    )
    const { part } = kase.checks.get(check.id)!
    const good = check.chances[nothing]!
    if (part !== undefined && outcome !== likeliest(good)) {
      const end: Step = { kind: 'named', parts: [part], probability: 1 }
      return { minutes: bench.minutesToTheEnd(), checks, end }
    }
  }
  return { minutes: bench.minutesToTheEnd(), checks, end: { kind: 'cannotSeparate', group: [] } }
}

/** The machine at the bench, and what the work on it has taken so far. */
class Bench {
  #stands: Stands = broughtIn
  #minutes = 0
  readonly #undo: ReadonlyMap<string, number>

  constructor({ checks }: Model) {
    this.#undo = new Map(checks.flatMap(({ setups }) => setups.map(({ id, undo }) => [id, undo])))
  }

  get stands(): Stands {
    return this.#stands
  }

  make(check: Check): void {
    this.#minutes += check.minutes + minutesOf(wayTo(check, this.#stands))
    this.#stands = standsAfter(check, this.#stands)
  }

  /** With everything put back at the end. */
  minutesToTheEnd(): number {
    return [...this.#stands.keys()].reduce(
      (sum, id) => sum + (this.#undo.get(id) ?? 0),
      this.#minutes,
    )
  }
}

interface Walked {
  readonly minutes: number
  readonly checks: number
  readonly end: Step
}

/** One way of walking. Walks share their beginnings, so steps are kept by what was read before them. */
class Walker {
  readonly #model: Model
  readonly #answers: ReadonlyMap<string, Check>
  readonly #order: readonly Check[] | null
  readonly #steps = new Map<string, Step>()
  readonly #impossible: ReadonlySet<string>

  /**
   * @param truly how checks are answered
   * @param order checks in their fixed order; null: as the tool proposes
   */
  constructor(model: Model, truly: Model, order: readonly Check[] | null) {
    this.#model = model
    this.#answers = byName(truly)
    this.#order = order
    const had = new Set((order ?? model.checks).map(({ id }) => id))
    this.#impossible = new Set(model.checks.map(({ id }) => id).filter((id) => !had.has(id)))
  }

  /** @param machine a number that decides, with the check, how this machine answers */
  follow(truth: number, machine: number): Walked {
    let evidence: readonly Evidence[] = []
    const bench = new Bench(this.#model)
    let checks = 0
    let key = ''
    for (;;) {
      const end = this.#step(key, evidence, bench.stands)
      const check = this.#next(end, evidence.length)
      if (check === null) return { minutes: bench.minutesToTheEnd(), checks, end }
      checks += 1
      const before = evidence.find((item) => item.check === check.id)
      const take = before === undefined ? 1 : 2 + (before.furtherTakes?.length ?? 0)
      // A second take has its own minutes, and is drawn by the chances it has after the first.
      bench.make((before && furtherTake(check, before)) ?? check)
      const really = this.#answers.get(check.id)!
      const now = (before && furtherTake(really, before)) ?? really
      const outcome = drawn(now.chances[truth]!, seeded(hash(`${check.id} ${take}`, machine)))
      evidence = withTake(evidence, check, outcome)
      key += `${check.id}=${outcome} `
    }
  }

  #step(key: string, evidence: readonly Evidence[], stands: Stands): Step {
    const known = this.#steps.get(key)
    if (known !== undefined) return known
    const { step } = walk(this.#model, { evidence, impossible: this.#impossible, stands })
    this.#steps.set(key, step)
    return step
  }

  #next(step: Step, answered: number): Check | null {
    if (step.kind !== 'ask') return null
    if (this.#order !== null) return this.#order[answered] ?? null
    return this.#model.checks.find(({ id }) => id === step.proposal.check)!
  }
}

const none: Tally = {
  walks: 0,
  minutes: 0,
  checks: 0,
  right: 0,
  wrong: 0,
  undecided: 0,
  wasted: 0,
  named: [],
}

const byName = ({ checks }: Model): ReadonlyMap<string, Check> =>
  new Map(checks.map((check) => [check.id, check]))

function added(tally: Tally, model: Model, truth: number, { minutes, checks, end }: Walked): Tally {
  const { parts } = model.cutSets[truth]!
  const named =
    end.kind === 'named' ? end.parts : end.kind === 'outsideThisTree' ? ([] as string[]) : null
  const right = named !== null && named.join() === parts.join()
  const wrong = named !== null && !right
  const inVain = wrong ? named.filter((part) => !parts.includes(part)) : []
  return {
    walks: tally.walks + 1,
    minutes: tally.minutes + minutes,
    checks: tally.checks + checks,
    right: tally.right + +right,
    wrong: tally.wrong + +wrong,
    undecided: tally.undecided + +(named === null),
    wasted:
      tally.wasted + inVain.reduce((sum, part) => sum + (model.wrongMinutes?.get(part) ?? 0), 0),
    named:
      end.kind === 'named' ? [...tally.named, { stated: end.probability, right }] : tally.named,
  }
}

export function together(tallies: readonly Tally[]): Tally {
  return tallies.reduce((a, b) => ({
    walks: a.walks + b.walks,
    minutes: a.minutes + b.minutes,
    checks: a.checks + b.checks,
    right: a.right + b.right,
    wrong: a.wrong + b.wrong,
    undecided: a.undecided + b.undecided,
    wasted: a.wasted + b.wasted,
    named: [...a.named, ...b.named],
  }))
}

/** A seed from a name and a whole number (FNV-1a, stirred by the end of MurmurHash3: both public domain). */
function hash(name: string, number: number): number {
  let h = number ^ 0x811c9dc5
  for (let i = 0; i < name.length; i += 1) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193)
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}
