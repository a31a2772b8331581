import type { Measurand } from '../../../knowledge/case.ts'
import type { Machine, Part, SheetLimits } from '../../../knowledge/schema/machine.ts'
import { difference } from '../../../measure/correct/shared-path.ts'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Limits } from '../../../measure/reading/reading.ts'
import type { Unit } from '../../../measure/reading/units.ts'
import { asRead } from './estimates.ts'
import { isEndToEnd, type Pair, type Paths, through } from './paths.ts'
import type { Together } from './types.ts'

/** The same part with other parts in the path, and without: what is left is theirs. */
export function differenceOf(machine: Machine, [one, other]: Pair, paths: Paths): Together[] {
  const [a, b] = [paths.get(one), paths.get(other)]
  if (!a || !b || a.part !== b.part) return []
  if (!isEndToEnd(one) || !isEndToEnd(other)) return []
  const [whole, part] = through(a).length > through(b).length ? [one, other] : [other, one]
  const [long, short] = whole === one ? [a, b] : [b, a]
  const ids = through(long).filter((id) => !through(short).includes(id))
  if (ids.length === 0 || !through(short).every((id) => through(long).includes(id))) return []
  if (!belongTogether(a.part, whole.by, part.by)) return []
  const between = machine.parts.filter(({ id }) => ids.includes(id))
  const limits = limitsTogether(between, whole.by.quantity.unit)
  return [
    {
      kind: 'difference',
      whole,
      part,
      between,
      left: difference(asRead(whole), asRead(part)),
      ...(limits && { limits }),
    },
  ]
}

/**
 * Whether the outer path, the whole one, holds the inner, of the part alone. In the same property it does; otherwise the
 * part alone is the property whose high limit lies next below: of a coil, through the cap holds the
 * secondary and not the primary.
 */
function belongTogether(part: Part, outer: Measurand, inner: Measurand): boolean {
  if (outer.at !== inner.at) return false
  if (outer.property === inner.property) return true
  const ways = part.reach ?? []
  if (ways.filter((way) => way.for.includes(outer.property)).length > 1) return false
  const inside = ways
    .flatMap((way) => way.for)
    .map((property) => ({ property, high: highOf(part.limits?.[property], outer) }))
    .filter(({ high }) => high < (outer.limits.high ?? 0))
  const next = Math.max(...inside.map(({ high }) => high))
  return inside.some(({ property, high }) => property === inner.property && high === next)
}

/** The high limit of what is read in the same unit and holds at the same temperature; ∞ for none. */
function highOf(limits: SheetLimits | undefined, { quantity, at }: Measurand): number {
  const parsed = amount(limits?.high)
  return parsed?.unit === quantity.unit && limits?.at === at ? parsed.value : Infinity
}

const amount = (text: string | undefined) => (text === undefined ? null : parseQuantityText(text))

/** In series: their limits added up, where each has limits from end to end. */
function limitsTogether(parts: readonly Part[], unit: Unit): Limits | undefined {
  const each = parts.flatMap((part) => seriesLimits(part, unit) ?? [])
  if (parts.length === 0 || each.length < parts.length) return undefined
  const sum = (side: 'low' | 'high') => each.reduce((all, limits) => all + limits[side], 0)
  return { low: sum('low'), high: sum('high') }
}

/** The one property of a part that has a high limit in the unit: what it has from end to end. */
function seriesLimits(
  { limits = {} }: Part,
  unit: Unit,
): { low: number; high: number } | undefined {
  const inUnit = Object.values(limits).flatMap(({ low, high }) => {
    const most = amount(high)
    return most?.unit === unit ? [{ low: amount(low)?.value ?? 0, high: most.value }] : []
  })
  return inUnit.length === 1 ? inUnit[0] : undefined
}
