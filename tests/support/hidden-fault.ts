import { presentForm } from '../../server/jobs/check/form.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import type { Touches } from '../../server/measure/reading/reading.ts'
import { kindsIn } from './kinds-of-form.ts'
import { shippedKnowledge } from './knowledge.ts'

/** A fault hidden in a machine, and what a person would find and type who has it in front of them. */
export interface HiddenFault {
  readonly part: string
  /** What comes back from a check, as it is typed, or the answer that is chosen. */
  typical(check: string): Answer
  /** Something else that could have come back. */
  mistaken(check: string): Answer
}

export type Answer = { readonly type: string } | { readonly choose: string }

/** One that the tool names. */
export interface NamedFault extends HiddenFault {
  /** The kinds of form that are filled in on the way. */
  readonly forms: ReadonlySet<string>
}

const named = new WeakMap<Case, NamedFault>()
const found = new WeakMap<Case, NamedFault>()

/**
 * A single fault that the tool names from typical answers, with the meter and the tools that the form
 * ticks by itself, but not at once: several pages are seen on the way.
 */
export function namedFault(kase: Case): NamedFault {
  const fault = named.get(kase) ?? firstNamed(kase)
  named.set(kase, fault)
  return fault
}

/** The same, and it is named as well where a mistake is made on the way and put right. */
export function hiddenFault(kase: Case): NamedFault {
  const fault = found.get(kase) ?? firstNamed(kase, 'a mistake on the way')
  found.set(kase, fault)
  return fault
}

function firstNamed(kase: Case, way: Manner = 'straight'): NamedFault {
  // In a small tree everything is named sooner.
  for (const least of [4, 3, 2, 1]) {
    for (const [cutSet, { faults }] of kase.model.cutSets.entries()) {
      if (faults.length !== 1) continue
      const straight = wayToName(kase, cutSet)
      if (straight === null || straight.readings < least) continue
      if (way !== 'straight' && wayToName(kase, cutSet, way) === null) continue
      return { ...faultOf(kase, cutSet), forms: straight.forms }
    }
  }
  throw new Error(`${kase.complaint.id} on ${kase.machine.id}: no fault is named`)
}

/** The fault of one cut set with a single one, whether it is named or not; of none, a cause outside the tree. */
export function faultOf(kase: Case, cutSet: number): HiddenFault {
  const ranked = (check: string) => outcomesByChance(kase, check, cutSet)
  return {
    part: kase.parts.get(kase.model.cutSets[cutSet]!.parts[0] ?? '')?.name ?? '',
    typical: (check) => answerFor(kase.checks.get(check)!, ranked(check)[0]!),
    mistaken: (check) => answerFor(kase.checks.get(check)!, ranked(check).at(-1)!),
  }
}

function outcomesByChance({ model, checks }: Case, check: string, cutSet: number): string[] {
  const row = model.checks.find(({ id }) => id === check)!.chances[cutSet]!
  const { outcomes } = checks.get(check)!
  return outcomes
    .map((o, i) => ({ o, p: row[i]! }))
    .sort((a, b) => b.p - a.p)
    .map(({ o }) => o)
}

/** One touch might have been a poor one; three that agree are believed. */
const touches = 3

/** Leads that nobody zeroed put this much into every reading of ohms. */
const leads = 0.3

/**
 * Readings as a meter shows them: the middle of the limits, half the low one, a fiftieth, OL; of a
 * voltage that only has to be high enough, well above, as nobody knows how fast it was pulled.
 */
function answerFor({ measurand }: CheckCard, outcome: string): Answer {
  if (measurand === undefined) return { choose: outcome }
  const { quantity, limits } = measurand
  if (quantity.overRange === outcome) return { type: several('OL') }
  const low = limits.low ?? 0
  const high = limits.high ?? low * 4
  const values: Readonly<Record<string, number>> = {
    short: low / 50,
    low: low / 3,
    'in range': (low + high) / 2,
    high: high * 3,
    open: high * 50,
  }
  const shown = values[outcome]! + (quantity.touches.leads ? leads : 0)
  return { type: several(String(Number(shown.toPrecision(3)))) }
}

const several = (text: string) => Array(touches).fill(text).join(' ')

function touchesOf(answer: Answer, { measurand }: CheckCard): Touches {
  if ('choose' in answer) return [{ kind: 'answer', answer: answer.choose }]
  const parsed = parseTouches(answer.type, measurand!.quantity)
  if (!parsed.ok) throw new Error(`${answer.type}: ${parsed.problem}`)
  return parsed.touches
}

type Manner = 'straight' | 'a mistake on the way'

interface Way {
  readonly readings: number
  readonly forms: ReadonlySet<string>
}

/**
 * The way until the right part is named; null if that never happens. A mistake on the way is made in the
 * first reading, and put right after the second.
 */
function wayToName(kase: Case, cutSet: number, way: Manner = 'straight'): Way | null {
  const forms = new Set<string>()
  const events: JobEvent[] = [openedAtBench(kase)]
  const make = (kind: 'reading' | 'correction' | 'take', check: string, mistaken = false) => {
    const ranked = outcomesByChance(kase, check, cutSet)
    const card = kase.checks.get(check)!
    const answer = answerFor(card, (mistaken ? ranked.at(-1) : ranked[0])!)
    const manner = { warmth: { kind: 'as the air' } } as const
    const made = { check, typed: '', touches: touchesOf(answer, card) }
    events.push(kind === 'take' ? { kind, ...made } : { kind, ...made, manner })
  }
  let first = ''
  for (;;) {
    const stored = events.map((event) => ({ event, at: new Date(0) }))
    const folded = fold(stored)
    const job = { id: 1, version: stored.length, events: stored }
    const standing = standingOf(shippedKnowledge(), { job, folded, kase })
    const { step } = standing.walk
    const astray = way !== 'straight' && events.length < 4
    if (astray && events.length > 1 && (step.kind !== 'ask' || events.length === 3)) {
      make('correction', first)
      way = 'straight'
      continue
    }
    if (step.kind !== 'ask') {
      const right =
        step.kind === 'named' && step.parts.join() === kase.model.cutSets[cutSet]!.parts.join()
      return right ? { readings: folded.readings.size, forms } : null
    }
    const { check, furtherTake } = step.proposal
    const card = kase.checks.get(check)!
    const form = presentForm(standing, card, furtherTake ? 'take' : 'reading')
    for (const kind of kindsIn(form, card)) forms.add(kind)
    first ||= check
    make(furtherTake ? 'take' : 'reading', check, astray && events.length === 1)
  }
}

function openedAtBench({ machine, complaint }: Case): JobEvent {
  const knowledge = shippedKnowledge()
  const tools = Object.entries(knowledge.tools.tools)
  const usual = tools.filter(([, { usual }]) => usual.includes('bench')).map(([id]) => id)
  const meter = [...knowledge.meters.keys()][0]!
  return {
    kind: 'opened',
    machine: machine.id,
    complaint: complaint.id,
    conditions: { where: 'bench', air: 20, engine: 'cold', tools: usual, meter },
    note: '',
  }
}
