import { type Crank, crankAngle, pistonTravel } from '../measure/correct/crank.ts'
import { parseQuantityText } from '../measure/reading/parse.ts'
import type { Quantities } from '../measure/reading/quantities.ts'
import type { Quantity } from '../measure/reading/quantity.ts'
import type { Unit } from '../measure/reading/units.ts'
import type { Machine, PartKind } from './schema/index.ts'
import type { Part, SheetLimits } from './schema/machine.ts'

/** What a sheet with its crank need not say: moments that it gives in mm before the top in degrees as well, or the other way. */
interface Known {
  readonly partKinds: ReadonlyMap<string, PartKind>
  readonly quantities: Quantities
}

/** The sheet with both measures of such moments; as it is where it gives no crank, or none that can be. */
export function withBothMeasures(machine: Machine, known: Known): Machine {
  const crank = crankOf(machine)
  if (crank === null) return machine
  const parts = machine.parts.map((part) => partWithBoth(part, crank, known))
  return parts.every((part, p) => part === machine.parts[p]) ? machine : { ...machine, parts }
}

/** Stroke and rod as numbers; null where the sheet gives none, or none that can be. */
export function crankOf({ crank }: Machine): Crank | null {
  const [stroke, rod] = [crank?.stroke, crank?.rod].map(
    (text) => (text === undefined ? undefined : parseQuantityText(text)) ?? undefined,
  )
  if (stroke?.unit !== 'mm' || rod?.unit !== 'mm' || rod.value <= stroke.value / 2) return null
  return { stroke: stroke.value, rod: rod.value }
}

/**
 * A value in mm before the top in degrees, or the other way, in steps of a tenth of a degree and of a hundredth of a
 * mm; null where the crank does not reach it.
 */
export function inOtherMeasure(value: number, from: Quantity, crank: Crank): number | null {
  if (from.crank === 'angle') {
    return value <= 180 ? Number(pistonTravel(value, crank).toFixed(2)) : null
  }
  return value <= crank.stroke ? Number(crankAngle(value, crank).toFixed(1)) : null
}

function partWithBoth(part: Part, crank: Crank, { partKinds, quantities }: Known): Part {
  const properties = partKinds.get(part.kind)?.properties ?? {}
  return Object.entries(properties).reduce((own, [property, { as, quantity }]) => {
    const [from, to] = [properties[as ?? '']?.quantity ?? '', quantity].map((id) => quantities[id])
    const given = part.limits?.[as ?? '']
    if (as === undefined || !from || !to || !given || part.limits?.[property]) return own
    const limits = carried(given, from, to.unit, crank)
    return limits === null ? own : added(own, property, as, limits)
  }, part)
}

function carried(
  { low, high, source }: SheetLimits,
  from: Quantity,
  unit: Unit,
  crank: Crank,
): SheetLimits | null {
  const [least, most] = [low, high].map((text) => {
    const value = text === undefined ? undefined : parseQuantityText(text)?.value
    return value === undefined ? undefined : inOtherMeasure(value, from, crank)
  })
  if (least === null || most === null) return null
  const texts = [low, high].filter(Boolean).join(' to ')
  return {
    ...(least !== undefined && { low: `${least} ${unit}` }),
    ...(most !== undefined && { high: `${most} ${unit}` }),
    source: `${source}: ${texts} with a stroke of ${crank.stroke}\u00a0mm and a rod of ${crank.rod}\u00a0mm`,
  }
}

/** It is read wherever the other measure is. */
function added(part: Part, property: string, as: string, limits: SheetLimits): Part {
  return {
    ...part,
    limits: { ...part.limits, [property]: limits },
    ...(part.reach && {
      reach: part.reach.map((reach) =>
        reach.for.includes(as) && !reach.for.includes(property)
          ? { ...reach, for: [...reach.for, property] }
          : reach,
      ),
    }),
  }
}
