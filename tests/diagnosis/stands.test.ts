import { describe, expect, it } from 'vitest'
import type { Check, Setup } from '../../server/diagnosis/model/model.ts'
import { minutesOf, standsAfter, together, wayTo } from '../../server/diagnosis/model/stands.ts'
import { heldOnce, minutesFrom, waysOf } from '../../server/diagnosis/plan/ways.ts'

const hood: Setup = { id: 'hood', minutes: 2, undo: 1 }
const heat: Setup = { id: 'heat', minutes: 15, undo: 0, lasts: 8 }
const check = (id: string, minutes: number, setups: readonly Setup[], forbids: readonly Setup[]) =>
  ({ id, minutes, setups, forbids, outcomes: ['yes', 'no'], chances: [] }) satisfies Check
const checks = [
  check('spark', 3, [heat], [hood]),
  check('pulse', 4, [heat, hood], []),
  check('look', 1, [hood], []),
  check('long', 7, [heat], []),
  { ...check('waiting', 7, [heat], []), waits: 5 },
]
const named = (id: string) => checks.find((each) => each.id === id)!

/** Minutes of each check in turn, from a machine that is together. */
function minutesAlong(...names: readonly string[]): number[] {
  let stands = together
  return names.map((name) => {
    const minutes = named(name).minutes + minutesOf(wayTo(named(name), stands))
    stands = standsAfter(named(name), stands)
    return minutes
  })
}

describe('what goes by itself', () => {
  it('serves all that is made before it is gone, and is made anew after', () => {
    expect(minutesAlong('spark', 'spark', 'spark')).toEqual([18, 3, 18])
    expect(minutesAlong('spark', 'look', 'pulse')).toEqual([18, 3, 19])
    expect(minutesAlong('spark', 'long')).toEqual([18, 22])
    // What a check waits for at its end needs no heat, and takes it all the same.
    expect(minutesAlong('spark', 'waiting')).toEqual([18, 7])
    expect(minutesAlong('waiting', 'spark')).toEqual([22, 18])
  })

  it('is gone after what cools it, and nothing else is', () => {
    const spray = { ...named('pulse'), cools: true }
    const after = standsAfter(spray, standsAfter(named('spark'), together))
    expect([...after.keys()]).toEqual(['hood'])
    const ways = waysOf([named('spark'), spray], together)
    const [spark, cooled] = ways.checks
    const held = heldOnce(ways, cooled!, heldOnce(ways, spark!, ways.held))
    expect(minutesFrom(ways, spark!, held)).toBe(19)
  })

  it('leaves what stays until it is put back as it is', () => {
    expect(minutesAlong('pulse', 'look', 'spark', 'look')).toEqual([21, 1, 4, 3])
  })

  it('costs the look-ahead what it costs whoever makes the checks', () => {
    const orders = checks.flatMap((a) => checks.flatMap((b) => checks.map((c) => [a, b, c])))
    expect(orders.length).toBe(125)
    const ways = waysOf(checks, together)
    for (const order of orders) {
      let held = ways.held
      const ahead = order.map((each) => {
        const way = ways.checks[checks.indexOf(each)]!
        const minutes = minutesFrom(ways, way, held)
        held = heldOnce(ways, way, held)
        return minutes
      })
      expect(ahead).toEqual(minutesAlong(...order.map(({ id }) => id)))
    }
  })
})
