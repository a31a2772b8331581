import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { calledBad, manyLevel } from '../../measure/decide/many.ts'
import { fitnessFor } from '../measuring/foreseen.ts'
import type { Judged } from '../measuring/judged.ts'
import type { MeterAtHand } from '../measuring/meter-at-hand.ts'
import type { Folded } from '../record/fold.ts'
import type { ReadJob } from './standing.ts'

/** A reading of a check-over, and what may be said of it among all the others. */
export interface OverRow {
  readonly card: CheckCard & { readonly measurand: Measurand }
  readonly judged?: Judged
  /** Why it was left out. */
  readonly skipped?: string
  readonly state: 'to read' | 'left out' | 'good' | 'bad' | 'unsure'
  /** It may have been the touch: worth one more take, once all others are made. */
  readonly again: boolean
}

/** More takes than anybody makes of one reading: among many readings one has to be surer of each. */
const mostTakes = 6

/** Every reading of a check-over in order, judged together. */
export function overRows({ kase, judged, folded, job, meter }: ReadJob): readonly OverRow[] {
  const letStand = new Set(
    job.events.flatMap(({ event }) => (event.kind === 'accepted' ? event.check : [])),
  )
  const cards = [...kase.checks.values()].flatMap((card) =>
    card.measurand ? [{ ...card, measurand: card.measurand }] : [],
  )
  const measured = cards.map(({ id }) => judged.get(id)?.measured ?? null)
  const bad = calledBad(
    measured.map((each) => each?.conformance.within ?? 1),
    manyLevel,
  )
  return cards.map((card, i): OverRow => {
    const taken = judged.get(card.id)
    const skipped = folded.skipped.get(card.id)
    if (taken === undefined) {
      const state = skipped === undefined ? 'to read' : 'left out'
      return { card, state, again: false, ...(skipped !== undefined && { skipped }) }
    }
    const it = measured[i]
    const isGood = it?.decision === 'conforms'
    const state = isGood ? 'good' : bad[i] ? 'bad' : 'unsure'
    const takes = folded.readings.get(card.id)?.takes.length ?? 0
    const isOpen = takes < mostTakes && !letStand.has(card.id)
    const again = state === 'unsure' && isOpen && mayBeTouch(taken) && isFit(meter, card, folded)
    return { card, judged: taken, state, again }
  })
}

/** A better touch could still tell: every one so far may have been poor, and the value is off if they were not. */
function mayBeTouch({ measured }: Judged): boolean {
  if (measured?.contact == null) return true
  return measured.contact.chanceAllPoor > 1e-6 && measured.conformance.within < 0.5
}

/** With a meter that cannot judge these limits no number of touches tells; only OL is OL on any. */
function isFit(
  meter: MeterAtHand,
  { measurand }: OverRow['card'],
  { conditions }: Folded,
): boolean {
  const fit = fitnessFor(measurand, meter, conditions)
  return fit !== null && fit.kind !== 'unfit'
}

/** It is still to be read, or worth one more take. */
export const isAskedFor = ({ state, again }: OverRow): boolean => state === 'to read' || again

/** What to read next: what was not read yet, and then what is worth one more take. */
export function nextRow(rows: readonly OverRow[]): OverRow | undefined {
  return rows.find(({ state }) => state === 'to read') ?? rows.find(({ again }) => again)
}
