import { isOnTheWayThere } from '../instantiate/setup-cards.ts'
import { throughOf } from '../instantiate/where/path.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/index.ts'
import type { Reach } from '../schema/machine.ts'
import { type DrawnSheet, type SheetReading, sheetFor } from './sheet.ts'

/** What is checked over: a machine, what is read at one of its connectors, or something loose on the bench. */
export type Scope =
  | { readonly kind: 'machine' }
  | { readonly kind: 'plug'; readonly plug: string }
  | { readonly kind: 'loose'; readonly assembly: string }

/** Something that lies on the bench by itself, with no harness and no flywheel. */
export interface Assembly {
  readonly id: string
  readonly name: string
  readonly parts: readonly string[]
}

/** What can lie loose on the bench, as the sheet says what comes off together. */
export function assembliesOf(machine: Machine): readonly Assembly[] {
  const byName = new Map<string, string[]>()
  for (const { id, assembly } of machine.parts) {
    if (assembly !== undefined) byName.set(assembly, [...(byName.get(assembly) ?? []), id])
  }
  return [...byName].map(([name, parts]) => ({
    id: name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-'),
    name,
    parts,
  }))
}

/** What is read of an assembly alone: at the connectors of its parts at which nothing else stands on the way. */
function looseReadings(
  { machine, readings }: DrawnSheet,
  { parts }: Assembly,
): readonly SheetReading[] {
  const isAlone = (reach: Reach) => throughOf(reach).every((part) => parts.includes(part))
  const own = new Map(
    machine.parts
      .filter(({ id }) => parts.includes(id))
      .map(({ id, reach = [] }) => [id, reach.filter(isAlone)]),
  )
  return [...readings.values()].filter(({ card: { part, spot, measurand } }) =>
    own.get(part)?.some(
      (way) =>
        way.at === spot.connector?.id &&
        // At the part itself every reading says for itself what stands on the way.
        (way.at !== undefined || way.for.includes(measurand.property)),
    ),
  )
}

/** The readings of a scope that are made with the engine stopped and cold, and with these tools at hand. */
export function readingsIn(
  knowledge: Knowledge,
  machine: Machine,
  scope: Scope,
  tools: readonly string[],
): readonly SheetReading[] {
  const sheet = sheetFor(knowledge, machine)
  return inScope(sheet, scope).filter(
    ({ card }) =>
      card.engine === 'stopped' &&
      card.measurand.warmedTo === undefined &&
      card.setups.every(isOnTheWayThere) &&
      card.tools.every(({ id }) => tools.includes(id)),
  )
}

const looseOne = (reading: SheetReading): SheetReading => ({ ...reading, card: reading.loose })

function inScope(sheet: DrawnSheet, scope: Scope): readonly SheetReading[] {
  const all = [...sheet.readings.values()]
  switch (scope.kind) {
    case 'machine':
      return all
    case 'plug':
      return all.filter(({ card }) => card.spot.connector?.id === scope.plug)
    case 'loose': {
      const assembly = assembliesOf(sheet.machine).find(({ id }) => id === scope.assembly)
      return assembly === undefined ? [] : looseReadings(sheet, assembly).map(looseOne)
    }
  }
}
