import { measuredReading } from '../../server/jobs/measuring/measured-reading.ts'
import { meterAtHand } from '../../server/jobs/measuring/meter-at-hand.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Reading, Touches } from '../../server/measure/reading/reading.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
/** The shipped machine that has a three-phase winding, a rectifier-regulator and a battery. */
export const charger = caseFor(knowledge, 'haulmoor-1e', 'not-charging')

const conditions = { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'hand' } as const
const hand = meterAtHand(knowledge, {
  meter: { choice: { kind: 'class', id: 'hand' }, zero: 0 },
})

/**
 * The band that explains these readings best, by the tool: one reading for each place of the check, in its
 * unit; Infinity is OL. As warm as the air, and at the speed of the sheet where it names one.
 */
export function bandRead(check: string, first: number, ...more: readonly number[]): string {
  const card = charger.checks.get(check)!
  const { quantity, rpm } = card.measurand!
  const takes: [Touches] = [[asReading(first), ...more.map(asReading)]]
  const manner = { warmth: { kind: 'as the air' }, ...(rpm !== undefined && { rpm }) } as const
  const { evidence } = measuredReading(card, { takes, manner }, hand, conditions)!
  return quantity.bands[evidence.indexOf(Math.max(...evidence))]!
}

const asReading = (value: number): Reading =>
  Number.isFinite(value) ? { kind: 'value', value } : { kind: 'over' }

/** What the table of a part kind says that a failure mode shows at one of its properties. */
export function row(
  kind: string,
  mode: string,
  property: string,
): Readonly<Record<string, number>> {
  const found = knowledge.partKinds.get(kind)!.modes.find(({ id }) => id === mode)
  const shows = found?.shows[property]
  if (shows === undefined) throw new Error(`${kind} says nothing of ${property} when ${mode}`)
  return shows
}

/** The outcome that the table holds for likeliest. */
export function likeliest(kind: string, mode: string, property: string): string {
  const shows = Object.entries(row(kind, mode, property))
  return shows.reduce((a, b) => (b[1] > a[1] ? b : a))[0]
}
