import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard, Measurand, PartCard, SetupCard, Spot } from '../case.ts'
import { complaintsFor } from '../fits.ts'
import { checkCard } from '../instantiate/card/check-card.ts'
import { floored } from '../instantiate/chances/doubt.ts'
import { healthyRow } from '../instantiate/chances/rows.ts'
import { failuresShown } from '../instantiate/chances/shown.ts'
import { readingsOfKind } from '../instantiate/checks-of-kind.ts'
import type { PlannedCheck } from '../instantiate/planned-check.ts'
import { rateFor } from '../instantiate/tree.ts'
import { partCards } from '../instantiate.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/index.ts'

/** A machine's sheet drawn out: all that can be measured on it, whatever is complained of. */
export interface DrawnSheet {
  readonly machine: Machine
  readonly parts: ReadonlyMap<string, PartCard>
  /** By name of the check: the name it has in every case that makes it. */
  readonly readings: ReadonlyMap<string, SheetReading>
}

/** One quantity of one part at one place, as its sheet gives limits for it. */
export interface SheetReading {
  readonly card: ReadingCard
  /** The same of what lies on the bench by itself. */
  readonly loose: ReadingCard
  /** What the property is: "resistance from end to end". */
  readonly says: string
  /** The part hangs between plugs: a wire, on the way to what makes or uses electricity. */
  readonly onTheWay: boolean
  /** What shows in it: failures of the part, and of what stands on the way to it. */
  readonly failures: readonly SheetFailure[]
  /** Chance of each outcome while none of them is there. */
  readonly healthy: readonly number[]
}

/** A check that measures one part at one place. */
export type ReadingCard = CheckCard & {
  readonly part: string
  readonly spot: Spot
  readonly measurand: Measurand
}

export interface SheetFailure {
  readonly part: string
  /** "is open somewhere in the winding" */
  readonly says: string
  /** Per 1000 machines that come in. */
  readonly rate: number
  /** Chance of each outcome of the check while it is there. */
  readonly row: readonly number[]
}

/** A failure that reads good at least so often is not cleared by a good reading. From memory. */
export const notClearedFrom = 0.3

const sheets = new WeakMap<Knowledge, Map<string, DrawnSheet>>()

/** The sheet of a machine. Made once and kept: it never changes while the knowledge stays. */
export function sheetFor(knowledge: Knowledge, machine: Machine): DrawnSheet {
  const kept = sheets.get(knowledge) ?? new Map<string, DrawnSheet>()
  sheets.set(knowledge, kept)
  const sheet = kept.get(machine.id) ?? drawSheet(knowledge, machine)
  kept.set(machine.id, sheet)
  return sheet
}

/** Draws out every reading that a sheet has limits for, each once: the way to it that costs least. */
export function drawSheet(knowledge: Knowledge, machine: Machine): DrawnSheet {
  const complaints = complaintsFor(knowledge, machine.id)
  const drawn = [...knowledge.checkKinds.values()]
    .flatMap((kind) => readingsOfKind(kind, machine, knowledge.partKinds, complaints))
    .flatMap((planned) => sheetReading(planned, knowledge, machine))
  // As the sheet has them: part by part, each with its limits in their order.
  const order = machine.parts.flatMap(({ id, limits = {} }) =>
    Object.keys(limits).map((property) => `${id}.${property}`),
  )
  const place = ({ card }: SheetReading) => order.indexOf(`${card.part}.${card.measurand.property}`)
  const cheapest = new Map<string, SheetReading>()
  for (const reading of drawn) {
    const { part, spot, measurand } = reading.card
    const key = [part, measurand.property, spot.says].join('\n')
    const known = cheapest.get(key)
    if (known === undefined || minutesTo(reading) < minutesTo(known)) cheapest.set(key, reading)
  }
  return {
    machine,
    parts: partCards(knowledge, machine),
    readings: new Map(
      [...cheapest.values()]
        .sort((a, b) => place(a) - place(b))
        .map((reading) => [reading.card.id, reading]),
    ),
  }
}

/** Minutes from a machine with all joined to the reading, without the way back. */
export function minutesTo({ card }: SheetReading): number {
  return card.setups.reduce((sum, { minutes }: SetupCard) => sum + minutes, card.minutes)
}

function sheetReading(
  planned: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
): SheetReading[] {
  const { partKinds } = knowledge
  const card = checkCard(planned, knowledge, machine)
  const { part, spot, measurand } = card
  const sheetPart = planned.part
  if (!part || !spot || !measurand || !sheetPart) return []
  const { property } = measurand
  const own = { part, spot, measurand }
  return [
    {
      card: { ...card, ...own },
      loose: { ...checkCard(planned, knowledge, machine, true), ...own },
      says: named(partKinds, sheetPart.kind).properties[property]?.says ?? property,
      onTheWay: (sheetPart.plugs?.length ?? 0) > 1,
      failures: failuresShown(planned, property, machine, partKinds).map(({ part, mode, row }) => ({
        part: part.id,
        says: mode.says,
        rate: rateFor(mode.rate, part.role).rate,
        row: floored(row, card.outcomes),
      })),
      healthy: floored(healthyOf(planned, machine), card.outcomes),
    },
  ]
}

function healthyOf(planned: PlannedCheck, machine: Machine) {
  const { about } = planned.kind
  if (about.kind === 'property') return healthyRow(planned, about, machine)
  if (about.kind === 'gate') return about.holdsNot
  return about.kind === 'question' ? about.otherwise : {}
}
