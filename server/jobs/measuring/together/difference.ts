import type { CheckCard } from '../../../knowledge/case.ts'
import type { Machine, Part, SheetLimits } from '../../../knowledge/schema/machine.ts'
import { difference } from '../../../measure/correct/shared-path.ts'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Limits } from '../../../measure/reading/reading.ts'
import { asRead } from './estimates.ts'
import { isOhms, type Pair, type Paths, through } from './paths.ts'
import type { Together } from './types.ts'

/** The same part with other parts in the path, and without: what is left is theirs. */
export function differenceOf(machine: Machine, [one, other]: Pair, paths: Paths): Together[] {
  const [a, b] = [paths.get(one), paths.get(other)]
  if (!a || !b || a.part !== b.part) return []
  if (!isOhms(one) || !isOhms(other)) return []
  const [whole, part] = through(a).length > through(b).length ? [one, other] : [other, one]
  const [long, short] = whole === one ? [a, b] : [b, a]
  const ids = through(long).filter((id) => !through(short).includes(id))
  if (ids.length === 0 || !through(short).every((id) => through(long).includes(id))) return []
  if (!belongTogether(a.part, whole.card, part.card)) return []
  const between = machine.parts.filter(({ id }) => ids.includes(id))
  const limits = limitsTogether(between)
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
 * Whether the whole path holds the path of the part alone. In the same property it does; otherwise the
 * part alone is the property whose high limit lies next below: of a coil, through the cap holds the
 * secondary and not the primary.
 */
function belongTogether(part: Part, whole: CheckCard, alone: CheckCard): boolean {
  const [outer, inner] = [whole.measured!, alone.measured!]
  if (outer.at !== inner.at) return false
  if (outer.property === inner.property) return true
  const ways = part.reach ?? []
  if (ways.filter((way) => way.for.includes(outer.property)).length > 1) return false
  const inside = ways
    .flatMap((way) => way.for)
    .map((property) => ({ property, high: highOhms(part.limits?.[property], outer.at) }))
    .filter(({ high }) => high < (outer.limits.high ?? 0))
  const next = Math.max(...inside.map(({ high }) => high))
  return inside.some(({ property, high }) => property === inner.property && high === next)
}

/** The high limit in ohms of what holds at the same temperature; ∞ where there is none. */
function highOhms(limits: SheetLimits | undefined, at: number | undefined): number {
  const parsed = limits?.high === undefined ? null : parseQuantityText(limits.high)
  return parsed?.unit === 'Ω' && limits?.at === at ? parsed.value : Infinity
}

const amount = (text: string | undefined) =>
  text === undefined ? undefined : parseQuantityText(text)?.value

/** In series: their limits added up, where each has limits in ohms from end to end. */
function limitsTogether(parts: readonly Part[]): Limits | undefined {
  const each = parts.map(seriesLimits)
  if (each.length === 0 || each.some((limits) => limits === undefined)) return undefined
  const sum = (side: 'low' | 'high') => each.reduce((all, limits) => all + limits![side], 0)
  return { low: sum('low'), high: sum('high') }
}

/** The one property of a part that has a high limit in ohms: its resistance from end to end. */
function seriesLimits({ limits = {} }: Part): { low: number; high: number } | undefined {
  const ohms = Object.values(limits).filter(
    ({ high }) => high !== undefined && parseQuantityText(high)?.unit === 'Ω',
  )
  const [only] = ohms
  if (only === undefined || ohms.length > 1) return undefined
  return { low: amount(only.low) ?? 0, high: amount(only.high)! }
}
