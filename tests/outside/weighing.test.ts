import { describe, expect, it } from 'vitest'
import { entropy } from '../support/oracles/entropy.ts'
import { optimalCost } from '../support/oracles/exact.ts'
import { greedy } from './sequencing.ts'

/**
 * D. J. C. MacKay 2003, section 4.1: twelve balls, one of them heavier or lighter, a pair of scales.
 * The number of weighings, and that outcomes should be as equally likely as can be, are confirmed from
 * chapter notes that quote it; the gains of the first weighing were computed.
 */
describe('twelve balls and a pair of scales', () => {
  // State 2b: ball b is heavy. State 2b + 1: it is light.
  const states = Array.from({ length: 24 }, (_, i) => i)
  const tilt = (state: number, side: number) => (state % 2 === 0 ? side : -side)
  const sizes = [1, 2, 3, 4, 5, 6]
  // With nothing known yet, all weighings of k balls against k are alike.
  const firstWeighings = sizes.map((k) =>
    states.map((state) => {
      const ball = state >> 1
      return tilt(state, ball < k ? 1 : ball < 2 * k ? -1 : 0)
    }),
  )
  const afterFirst = firstWeighings.map((outcomes) =>
    [-1, 0, 1].map((tilted) => states.filter((state) => outcomes[state] === tilted)),
  )

  it('give the first weighing 0.8167, 1.2516, 1.5, 1.5850, 1.4834, 1 bit (computed)', () => {
    expect(firstWeighings.map((outcomes) => gain(outcomes).toFixed(4))).toEqual([
      '0.8167',
      '1.2516',
      '1.5000',
      '1.5850',
      '1.4834',
      '1.0000',
    ])
  })

  it('are weighed four against four first, for all of log2 3 bits (confirmed)', () => {
    const model = { priors: states.map(() => 1), tests: firstWeighings.map(asTest) }
    expect(sizes[greedy(model)(states)]).toBe(4)
    expect(gain(firstWeighings[3]!)).toBeCloseTo(Math.log2(3), 12)
  })

  it('leave more than the nine that two weighings can tell apart, except after 4 against 4', () => {
    const largest = afterFirst.map((groups) => Math.max(...groups.map(({ length }) => length)))
    expect(largest).toEqual([20, 16, 12, 8, 10, 12])
  })

  it('are told apart by three weighings: after 4 against 4, two always do (confirmed)', () => {
    const groups = afterFirst[3]!
    expect(groups.map(({ length }) => length)).toEqual([8, 8, 8])
    for (const group of groups) {
      const model = { priors: group.map(() => 1), tests: weighingsOf(group).map(asTest) }
      // Eight equal leaves of a three-way tree have mean depth 2 only if all lie at depth 2.
      expect(optimalCost(model)).toBe(2)
    }
  })

  function asTest(outcomes: readonly number[]) {
    return { cost: 1, outcomes }
  }

  /** Every way to lay the suspect balls left, right or aside, where good balls can fill up the pans. */
  function weighingsOf(group: readonly number[]): number[][] {
    const balls = [...new Set(group.map((state) => state >> 1))]
    return Array.from({ length: 3 ** balls.length }, (_, code) =>
      balls.map((_ball, i) => (Math.floor(code / 3 ** i) % 3) - 1),
    )
      .filter((sides) => Math.abs(sides.reduce((a, b) => a + b, 0)) <= 12 - balls.length)
      .map((sides) => group.map((state) => tilt(state, sides[balls.indexOf(state >> 1)]!)))
  }

  /** What a weighing tells: with certain outcomes, the entropy of the outcomes themselves. */
  function gain(outcomes: readonly number[]): number {
    return entropy([-1, 0, 1].map((tilted) => outcomes.filter((each) => each === tilted).length))
  }
})
