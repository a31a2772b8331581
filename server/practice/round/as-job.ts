import { usualWarmth } from '../../jobs/measuring/warmth.ts'
import type { Conditions, JobEvent, StoredJob } from '../../jobs/record/events.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { parseTouches } from '../../measure/reading/parse-touches.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import type { Hidden } from '../seen/hidden.ts'
import type { Seen } from '../seen/look.ts'

/** One check and what came back, as a round or the tool made it. */
export interface Reading {
  readonly card: CheckCard
  readonly seen: Seen
  /** It tells nothing, since something was in its way. */
  readonly spoilt?: boolean
}

/** How things stand in a round: a bench, every tool on the list, and the meter that was drawn. */
export function conditionsOf({ knowledge, air, meter }: Hidden): Conditions {
  return {
    ...{ where: 'bench', air: Math.round(air), engine: 'cold', meter: meter.id },
    tools: Object.keys(knowledge.tools.tools),
  }
}

/** A round as the job it would be, so that it is judged and weighed as any job. Nothing of it is kept. */
export function asJob(hidden: Hidden, readings: readonly Reading[]): StoredJob {
  const conditions = conditionsOf(hidden)
  const { machine, complaint } = hidden.kase
  const events: JobEvent[] = [
    { kind: 'opened', machine: machine.id, complaint: complaint.id, conditions, note: '' },
    { kind: 'meter', meter: { kind: 'class', id: conditions.meter }, zero: leadsRead(hidden) },
  ]
  const made = new Set<string>()
  for (const { card, seen, spoilt } of readings) {
    const touches = spoilt ? null : touchesOf(card, seen)
    if (touches === null) continue
    const what = { check: card.id, typed: seen.kind === 'typed' ? seen.text : '', touches }
    const manner = { warmth: usualWarmth(conditions, card.measurand) }
    events.push(
      made.has(card.id) ? { kind: 'take', ...what } : { kind: 'reading', ...what, manner },
    )
    made.add(card.id)
  }
  const stored = events.map((event) => ({ event, at: new Date(0) }))
  return { id: 0, version: stored.length, events: stored }
}

/** Ω of the leads, as the meter shows them: to a tenth. */
export const leadsRead = ({ leads }: Hidden): number => Math.round(leads * 10) / 10

/** Null where nothing came back. */
function touchesOf({ measurand }: CheckCard, seen: Seen): Touches | null {
  if (seen.kind === 'answer') return [{ kind: 'answer', answer: seen.id }]
  if (seen.kind === 'barred' || measurand === undefined) return null
  const parsed = parseTouches(seen.text, measurand.quantity)
  return parsed.ok ? parsed.touches : null
}
