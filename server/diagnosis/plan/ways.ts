import type { Check, Setup } from '../model/model.ts'
import type { Stands } from '../model/stands.ts'

/** Set-ups that are followed one by one, as bits of a number. */
const mostSetups = 30

/** What holds on a branch, as bits, and the minutes of work that what fades of it will still last. */
export interface Held {
  readonly bits: number
  readonly left: number
}

/** One check's needs on the machine as it may stand; the bits are those of `Ways`. */
export interface CheckWay {
  /** Minutes without the set-ups that are followed. */
  readonly minutes: number
  readonly needs: number
  readonly forbids: number
  /** Nothing that fades is left once it is made. */
  readonly cools: boolean
  /** Minutes of its own that are a wait at its end. */
  readonly waits: number
}

/** What checks need and forbid, as bits, so that the minutes of any order of them are soon told. */
export interface Ways {
  /** Minutes to make each set-up that is followed, and to put it back. */
  readonly make: readonly number[]
  readonly undo: readonly number[]
  /** Those that go by themselves, as bits; one clock serves them all. */
  readonly fading: number
  /** Minutes of work that these last once they are made. */
  readonly lasts: number
  /** What of them holds at the start. */
  readonly held: Held
  readonly checks: readonly CheckWay[]
}

/**
 * The set-ups that matter to these checks, as bits: those that hold and are in the way of one, then those
 * that are needed. Beyond thirty they count into their check's own minutes, made and put back each time:
 * dearer than they are, never cheaper.
 */
export function waysOf(checks: readonly Check[], stands: Stands): Ways {
  const holding = checks.flatMap(({ forbids = [] }) => forbids.filter(({ id }) => stands.has(id)))
  const followed = new Map<string, Setup>()
  for (const setup of [...holding, ...checks.flatMap(({ setups }) => setups)]) {
    if (followed.size < mostSetups) followed.set(setup.id, setup)
  }
  const bitOf = new Map([...followed.keys()].map((id, bit) => [id, 1 << bit]))
  const bits = (ids: Iterable<string>) => {
    let sum = 0
    for (const id of ids) sum |= bitOf.get(id) ?? 0
    return sum
  }
  const fading = [...followed.values()].filter(({ lasts }) => lasts !== undefined)
  const leftOf = fading.flatMap(({ id }) => stands.get(id) ?? [])
  return {
    make: [...followed.values()].map(({ minutes }) => minutes),
    undo: [...followed.values()].map(({ undo }) => undo),
    fading: bits(fading.map(({ id }) => id)),
    lasts: Math.min(...fading.flatMap(({ lasts }) => lasts ?? [])),
    held: { bits: bits(stands.keys()), left: Math.min(...leftOf) },
    checks: checks.map(({ minutes, waits = 0, setups, forbids = [], cools = false }) => ({
      ...{ cools, waits },
      minutes: setups
        .filter(({ id }) => !bitOf.has(id) && !stands.has(id))
        .reduce((sum, setup) => sum + setup.minutes + setup.undo, minutes),
      needs: bits(setups.map(({ id }) => id)),
      forbids: bits(forbids.map(({ id }) => id)),
    })),
  }
}

/** Minutes of a check with the way to it, where these set-ups hold. */
export function minutesFrom(ways: Ways, way: CheckWay, held: Held): number {
  const { minutes, needs, forbids } = way
  return (
    minutes +
    sumOf(ways.make, needs & ~lasting(ways, way, held)) +
    sumOf(ways.undo, forbids & held.bits)
  )
}

/** What holds once the check is made. */
export function heldOnce(ways: Ways, way: CheckWay, held: Held): Held {
  const { minutes, needs, forbids, cools } = way
  const isMade = (needs & ways.fading & ~lasting(ways, way, held)) !== 0
  const left = isMade ? ways.lasts - minutes : leftAfter(ways, way, held)
  const bits = (held.bits & ~forbids) | needs
  return { bits: left > 0 && !cools ? bits : bits & ~ways.fading, left }
}

/** Spares the sum where nothing fades. */
function leftAfter(ways: Ways, way: CheckWay, held: Held): number {
  return held.left === Number.POSITIVE_INFINITY
    ? held.left
    : held.left - minutesFrom(ways, way, held)
}

/** What holds now and will until the check has been read. */
function lasting({ fading }: Ways, { minutes, waits }: CheckWay, { bits, left }: Held): number {
  return left >= minutes - waits ? bits : bits & ~fading
}

/** Minutes to put everything back that is followed, at the end. */
export const minutesToPutBack = ({ undo }: Ways, { bits }: Held): number => sumOf(undo, bits)

function sumOf(minutes: readonly number[], bits: number): number {
  let sum = 0
  for (let i = 0; bits >> i !== 0; i += 1) if ((bits >> i) & 1) sum += minutes[i]!
  return sum
}
