import type { CheckCard } from '../../knowledge/case.ts'
import type { Machine, Part, Reach, SheetLimits } from '../../knowledge/schema/machine.ts'
import type { Measured } from '../../measure/measured.ts'
import { parseQuantityText } from '../../measure/parse.ts'
import type { Limits } from '../../measure/reading.ts'
import { difference, type Estimate, twins } from '../../measure/shared-path.ts'

/** A check that was measured, with what came of it. */
export interface Read {
  readonly card: CheckCard
  readonly measured: Measured
}

/** What two readings say together that neither says alone. */
export type Together =
  /** The same part with other parts in the path, and without: what those others have. */
  | {
      readonly kind: 'difference'
      readonly whole: Read
      readonly part: Read
      readonly between: readonly Part[]
      readonly left: Estimate
      /** What the parts in between may have together; left out where the sheet does not say. */
      readonly limits?: Limits
    }
  /** Two parts of one kind, role and limits, read in the same way. */
  | {
      readonly kind: 'twins'
      readonly one: Read
      readonly other: Read
      readonly ratio: Estimate
    }
  /**
   * Line to line R beside line to ground A of one winding: with a leak at one place A = x·R + L, so
   * x is at most A/R, and L at least A − R and at most A.
   */
  | {
      readonly kind: 'leak'
      readonly line: Read
      readonly ground: Read
      readonly position: number
      readonly least: number
      readonly most: number
    }

/** Everything that pairs of these readings say together, in the order of the readings. */
export function readingsTogether(machine: Machine, reads: readonly Read[]): Together[] {
  const valued = reads.filter(({ measured }) => typeof measured.asRead === 'number')
  const paths = new Map(valued.map((read) => [read, pathOf(machine, read.card)]))
  const pairs = valued.flatMap((one, i) =>
    valued.slice(i + 1).map((other) => [one, other] as const),
  )
  return [
    ...pairs.flatMap((pair) => differenceOf(machine, pair, paths)),
    ...twinsAmong(machine, pairs, paths),
    ...pairs.flatMap((pair) => leakOf(pair, paths)),
  ]
}

/** The way of the sheet that a check goes, and whose part it reads. */
interface Path {
  readonly part: Part
  readonly reach: Reach
}

function pathOf({ parts }: Machine, { part: id, measured, spot }: CheckCard): Path | undefined {
  const part = parts.find((each) => each.id === id)
  const reach = part?.reach?.find(
    (each) =>
      each.for.includes(measured!.property) &&
      each.at === spot?.connector?.id &&
      (each.pins?.map(String) ?? each.touch)?.join() === spot?.touch.join(),
  )
  return part && reach && { part, reach }
}

type Pair = readonly [Read, Read]
type Paths = ReadonlyMap<Read, Path | undefined>

function differenceOf(machine: Machine, [one, other]: Pair, paths: Paths): Together[] {
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

const through = ({ reach }: Path): readonly string[] => reach.through ?? []
const isOhms = ({ card }: Read) => card.measured!.quantity.id === 'resistance'

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

/** Each pair of twins once for each property, at like places where there is a choice. */
function twinsAmong(machine: Machine, pairs: readonly Pair[], paths: Paths): Together[] {
  const seen = new Set<string>()
  const fitting = pairs.filter(([one, other]) =>
    areTwins(paths.get(one), paths.get(other), one, other),
  )
  const sameWay = ([one, other]: Pair) =>
    one.card.spot?.connector?.id === other.card.spot?.connector?.id ? 0 : 1
  return fitting
    .toSorted((a, b) => sameWay(a) - sameWay(b))
    .flatMap(([one, other]): Together[] => {
      const order = machine.parts.findIndex(({ id }) => id === one.card.part)
      const later = machine.parts.findIndex(({ id }) => id === other.card.part)
      const [first, second] = order < later ? [one, other] : [other, one]
      const name = [first.card.part, second.card.part, first.card.measured!.property].join()
      if (seen.has(name)) return []
      const [a, b] = [estimate(first), estimate(second)]
      if (!(a.value > 0 && b.value > 0)) return []
      seen.add(name)
      return [{ kind: 'twins', one: first, other: second, ratio: twins(a, b) }]
    })
}

function areTwins(a: Path | undefined, b: Path | undefined, one: Read, other: Read): boolean {
  if (!a || !b || a.part === b.part) return false
  const [x, y] = [one.card.measured!, other.card.measured!]
  return (
    a.part.kind === b.part.kind &&
    a.part.role === b.part.role &&
    x.property === y.property &&
    x.quantity.id !== 'isolation' &&
    x.limits.low === y.limits.low &&
    x.limits.high === y.limits.high &&
    through(a).length === through(b).length
  )
}

function leakOf([one, other]: Pair, paths: Paths): Together[] {
  const [ground, line] =
    one.card.measured!.quantity.id === 'isolation' ? [one, other] : [other, one]
  const [a, b] = [paths.get(ground), paths.get(line)]
  if (!a || !b || a.part !== b.part || !isOhms(line)) return []
  if (ground.card.measured!.quantity.id !== 'isolation') return []
  // Another winding in the path to ground might be the one that leaks.
  if (!through(a).every((id) => through(b).includes(id))) return []
  if (ground.card.spot?.connector?.id !== line.card.spot?.connector?.id) return []
  const [A, R] = [asRead(ground).value, asRead(line).value]
  if (!(R > 0)) return []
  return [
    {
      kind: 'leak',
      line,
      ground,
      position: Math.min(1, A / R),
      least: Math.max(0, A - R),
      most: A,
    },
  ]
}

/** As the meter showed it, with the doubt of the meter and the touches alone: leads go out again. */
function asRead({ measured }: Read): Estimate {
  const own = (measured.budget?.lines ?? []).filter(
    ({ what }) => what === 'meter' || what === 'touches',
  )
  return { value: measured.asRead as number, u: Math.hypot(...own.map(({ u }) => u)) }
}

/** Volts as compared with the limits: two pulls differ. Ohms without the leads: both are equally warm. */
function estimate({ card, measured }: Read): Estimate {
  const { corrected, budget, steps } = measured
  if (corrected === null || budget === null) return { value: 0, u: 0 }
  if (card.measured!.quantity.unit === 'V') return { value: corrected, u: budget.u }
  const without = steps.find(({ what }) => what === 'leads')?.result
  const own = budget.lines.filter(({ what }) => what !== 'temperature')
  return {
    value: without ?? (measured.asRead as number),
    u: Math.hypot(...own.map(({ u }) => u)),
  }
}
