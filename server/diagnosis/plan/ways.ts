import type { Check, Setup } from '../model/model.ts'
import type { Stands } from '../model/stands.ts'

/** Set-ups that are followed one by one, as bits of a number. */
const mostSetups = 30

/** One check's needs on the machine as it may stand; the bits are those of `Ways`. */
export interface CheckWay {
  /** Minutes without the set-ups that are followed. */
  readonly minutes: number
  readonly needs: number
  readonly forbids: number
}

/** What checks need and forbid, as bits, so that the minutes of any order of them are soon told. */
export interface Ways {
  /** Minutes to make each set-up that is followed, and to put it back. */
  readonly make: readonly number[]
  readonly undo: readonly number[]
  /** What of them holds at the start. */
  readonly stands: number
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
  return {
    make: [...followed.values()].map(({ minutes }) => minutes),
    undo: [...followed.values()].map(({ undo }) => undo),
    stands: bits(stands),
    checks: checks.map(({ minutes, setups, forbids = [] }) => ({
      minutes: setups
        .filter(({ id }) => !bitOf.has(id) && !stands.has(id))
        .reduce((sum, setup) => sum + setup.minutes + setup.undo, minutes),
      needs: bits(setups.map(({ id }) => id)),
      forbids: bits(forbids.map(({ id }) => id)),
    })),
  }
}

/** Minutes of a check with the way to it, where these set-ups hold. */
export function minutesFrom(
  ways: Ways,
  { minutes, needs, forbids }: CheckWay,
  stands: number,
): number {
  return minutes + sumOf(ways.make, needs & ~stands) + sumOf(ways.undo, forbids & stands)
}

/** What holds once the check is made. */
export const standsOnce = ({ needs, forbids }: CheckWay, stands: number): number =>
  (stands & ~forbids) | needs

/** Minutes to put everything back that is followed, at the end. */
export const minutesToPutBack = ({ undo }: Ways, stands: number): number => sumOf(undo, stands)

function sumOf(minutes: readonly number[], bits: number): number {
  let sum = 0
  for (let i = 0; bits >> i !== 0; i += 1) if ((bits >> i) & 1) sum += minutes[i]!
  return sum
}
