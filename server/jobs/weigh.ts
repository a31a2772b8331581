import type { Evidence } from '../diagnosis/model.ts'
import type { WalkOptions } from '../diagnosis/walk-types.ts'
import type { Case, CheckCard } from '../knowledge/case.ts'
import { judge } from '../measure/judge.ts'
import type { Reading } from '../measure/reading.ts'
import type { Conditions } from './events.ts'
import type { Folded } from './fold.ts'

/** What the readings of a job say, and which checks it cannot make: all that a walk asks for. */
export function walkOptions(kase: Case, folded: Folded): WalkOptions {
  return { evidence: evidenceOf(kase, folded), impossible: impossibleChecks(kase, folded) }
}

/** A reading of a check that the knowledge no longer has stays on the job, and weighs nothing. */
function evidenceOf(kase: Case, folded: Folded): Evidence[] {
  return [...folded.readings].flatMap(([check, { reading }]) => {
    const card = kase.checks.get(check)
    return card === undefined ? [] : [{ check, outcomes: outcomeChances(card, reading) }]
  })
}

/** The probability of each outcome of the check, given the reading. */
function outcomeChances(card: CheckCard, reading: Reading): readonly number[] {
  switch (reading.kind) {
    case 'over':
      if (card.measured?.quantity.overRange === null) return tellsNothing(card)
      return judged(card, reading)
    case 'value':
      return judged(card, reading)
    case 'answer':
      if (!card.outcomes.includes(reading.answer)) return tellsNothing(card)
      return card.outcomes.map((outcome) => (outcome === reading.answer ? 1 : 0))
    case 'could-not-tell':
      return tellsNothing(card)
  }
}

function judged(card: CheckCard, reading: Reading): readonly number[] {
  if (card.measured === undefined) return tellsNothing(card)
  return judge(reading, card.measured.quantity, card.measured.limits)
}

/** Every outcome fits alike: also where the knowledge has changed and the reading no longer fits it. */
const tellsNothing = (card: CheckCard): number[] => card.outcomes.map(() => 1)

function impossibleChecks(kase: Case, { opened, skipped }: Folded): ReadonlySet<string> {
  const cards = [...kase.checks.values()]
  const passed = cards.filter(({ id }) => skipped.has(id))
  const missing = cards.filter((card) => !isPossible(card, opened.conditions))
  return new Set([...passed, ...missing].map(({ id }) => id))
}

function isPossible(card: CheckCard, { where, tools }: Conditions): boolean {
  return card.where.includes(where) && card.tools.every(({ id }) => tools.includes(id))
}
