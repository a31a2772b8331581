import { walk } from '../../server/diagnosis/walk.ts'
import type { JobEvent } from '../../server/jobs/events.ts'
import { fold } from '../../server/jobs/fold.ts'
import { walkOptions } from '../../server/jobs/weigh.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import type { Reading } from '../../server/measure/reading.ts'
import { shippedKnowledge } from './app.ts'

/** A fault hidden in a machine, and what a person would find and type who has it in front of them. */
export interface HiddenFault {
  readonly part: string
  /** What comes back from a check, as it is typed, or the answer that is chosen. */
  typical(check: string): Answer
  /** Something else that could have come back. */
  mistaken(check: string): Answer
}

export type Answer = { readonly type: string } | { readonly choose: string }

/**
 * A single fault that the tool names from typical answers, with the tools that the form ticks by itself,
 * but not at once: several pages are seen on the way.
 */
export function hiddenFault(kase: Case): HiddenFault {
  const cutSet = kase.model.cutSets.findIndex(
    ({ faults }, index) => faults.length === 1 && (stepsToName(kase, index) ?? 0) >= 4,
  )
  if (cutSet < 0) throw new Error(`${kase.complaint.id}: no fault is named after four readings`)
  const ranked = (check: string) => outcomesByChance(kase, check, cutSet)
  return {
    part: kase.parts.get(kase.model.cutSets[cutSet]!.parts[0]!)!.name,
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

/** Readings as a meter shows them: the middle of the limits, half the low one, a fiftieth, OL. */
function answerFor({ measured }: CheckCard, outcome: string): Answer {
  if (measured === undefined) return { choose: outcome }
  const { quantity, limits } = measured
  if (quantity.overRange === outcome) return { type: 'OL' }
  const low = limits.low ?? limits.high! / 2
  const high = limits.high ?? low * 1.5
  const values: Readonly<Record<string, number>> = {
    short: low / 50,
    low: low / 2,
    'in range': (low + high) / 2,
    high: high * 2,
    open: high * 50,
  }
  return { type: String(Number(values[outcome]!.toPrecision(3))) }
}

function readingOf(answer: Answer): Reading {
  if ('choose' in answer) return { kind: 'answer', answer: answer.choose }
  if (answer.type === 'OL') return { kind: 'over' }
  return { kind: 'value', value: Number(answer.type) }
}

/** How many checks it takes until the right part is named; null if that never happens. */
function stepsToName(kase: Case, cutSet: number): number | null {
  const tools = Object.entries(shippedKnowledge().tools.tools)
  const usual = tools.filter(([, { usual }]) => usual.includes('bench')).map(([id]) => id)
  const events: JobEvent[] = [
    {
      kind: 'opened',
      machine: kase.machine.id,
      complaint: kase.complaint.id,
      conditions: { where: 'bench', air: 20, engine: 'cold', tools: usual, meter: '' },
      note: '',
    },
  ]
  for (;;) {
    const folded = fold(events.map((event) => ({ event, at: new Date(0) })))
    const { step } = walk(kase.model, walkOptions(kase, folded))
    if (step.kind !== 'ask') {
      const right =
        step.kind === 'named' && step.parts.join() === kase.model.cutSets[cutSet]!.parts.join()
      return right ? folded.readings.size : null
    }
    const { check } = step.proposal
    const [outcome] = outcomesByChance(kase, check, cutSet)
    const reading = readingOf(answerFor(kase.checks.get(check)!, outcome!))
    events.push({ kind: 'reading', check, typed: '', reading })
  }
}
