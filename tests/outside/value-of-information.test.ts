import { describe, expect, it } from 'vitest'
import { beliefs } from '../../server/diagnosis/belief/belief.ts'
import type { Model } from '../../server/diagnosis/model/model.ts'
import { together } from '../../server/diagnosis/model/stands.ts'
import { plan } from '../../server/diagnosis/plan/plan.ts'
import type { Stakes } from '../../server/diagnosis/plan/stakes.ts'
import { fitOrder } from '../../server/diagnosis/verdict/first-fit.ts'
import { fitCost } from '../support/oracles/fit-cost.ts'
import { modelFromTable } from '../support/tables.ts'

/** A decision: what each choice pays in each state. The loss is what perfect knowledge would add. */
function stakes(payoffs: readonly (readonly number[])[]): Stakes {
  return {
    nameFrom: () => 1,
    loss: (p, which) => {
      const states = [...Array.from(which).keys()]
      const mean = (choice: readonly number[]) =>
        states.reduce((sum, i) => sum + p[i]! * choice[which[i]!]!, 0)
      const perfect = states.reduce(
        (sum, i) => sum + p[i]! * Math.max(...payoffs.map((choice) => choice[which[i]!]!)),
        0,
      )
      return perfect - Math.max(...payoffs.map(mean))
    },
  }
}

/** States with priors and one test, whose chances are given state by state. */
function decision(
  priors: readonly number[],
  outcomes: readonly string[],
  chances: readonly (readonly number[])[],
  cost: number,
): Model {
  const named = Object.fromEntries(priors.map((prior, i) => [`state ${i}`, prior]))
  const model = modelFromTable(named, { test: priors.map((_, i) => i) })
  return {
    ...model,
    checks: [{ id: 'test', minutes: cost, setups: [], outcomes: [...outcomes], chances }],
  }
}

const planned = (model: Model, payoffs: readonly (readonly number[])[]) => {
  const belief = model.cutSets.map(({ prior }) => prior)
  return plan(model, belief, () => true, together, { stakes: stakes(payoffs) })
}

/** What the test is worth beyond its cost: the loss without it, less all it leaves to pay. */
const netValue = (model: Model, payoffs: readonly (readonly number[])[]) => {
  const { stopping, proposals } = planned(model, payoffs)
  return stopping - proposals[0]!.expectedMinutes!
}

/**
 * H. Raiffa 1968, Decision Analysis, pp. 34-36, as solved in P. P. Shenoy 1992, Operations Research
 * 40(3): confirmed in public copies of the tables and of the solution. In thousands of dollars.
 */
describe('the oil wildcatter', () => {
  const chances = [
    [0.6, 0.3, 0.1],
    [0.3, 0.4, 0.3],
    [0.1, 0.4, 0.5],
  ]
  const model = decision([0.5, 0.3, 0.2], ['none', 'open', 'closed'], chances, 10)
  const payoffs = [
    [0, 0, 0],
    [-70, 50, 200],
  ]

  it.each([
    [0, 0.7317, 0.2195, 0.0488],
    [1, 0.4286, 0.3429, 0.2286],
    [2, 0.2083, 0.375, 0.4167],
  ])('believes after outcome %i as published: %f %f %f', (outcome, ...published) => {
    const outcomes = [0, 1, 2].map((o) => (o === outcome ? 1 : 0))
    const after = beliefs(model, [{ check: 'test', likelihoods: outcomes }]).at(-1)!
    published.forEach((p, i) => {
      expect(Math.abs(after[i]! - p)).toBeLessThan(1e-4)
    })
  })

  it('loses 35 by drilling without knowing, and asks for the test: 22.5 against 20', () => {
    expect(planned(model, payoffs).stopping).toBeCloseTo(35, 10)
    expect(netValue(model, payoffs)).toBeCloseTo(22.5 - 20, 10)
    expect(planned(model, payoffs).worthAsking).toBe(true)
  })
})

/** W. Samuelson, S. Marks, Managerial Economics, Wiley, ch. 13: confirmed on public copies of the pages. */
describe('imperfect and useless tests', () => {
  const payoffs = [
    [0, 0],
    [600, -200],
  ]
  // Joint table of the first case inferred: good and wet .3, good and dry .2, bad and wet .1, bad and dry .4.
  const useful = (cost: number) =>
    decision(
      [0.4, 0.6],
      ['good', 'bad'],
      [
        [0.75, 0.25],
        [1 / 3, 2 / 3],
      ],
      cost,
    )
  // Joint table of the second: good and wet .1, good and dry .1, bad and wet .3, bad and dry .5.
  const useless = decision(
    [0.4, 0.6],
    ['good', 'bad'],
    [
      [0.25, 0.75],
      [1 / 6, 5 / 6],
    ],
    0.001,
  )

  it('a test worth 20 is asked for at 19 and not at 21 (the 20 is computed)', () => {
    expect(planned(useful(19), payoffs).stopping).toBeCloseTo(120, 10)
    expect(planned(useful(19), payoffs).worthAsking).toBe(true)
    expect(planned(useful(21), payoffs).worthAsking).toBe(false)
  })

  it('a test that tells 0.0074 bit and changes no decision is worth nothing, and is not asked for', () => {
    const { proposals, worthAsking } = planned(useless, payoffs)
    expect(proposals[0]!.bits).toBeCloseTo(0.0074, 4)
    expect(netValue(useless, payoffs)).toBeCloseTo(-0.001, 10)
    expect(worthAsking).toBe(false)
  })
})

/**
 * P. Goodwin, G. Wright, Decision Analysis for Management Judgment, ch. 8: tree values confirmed,
 * likelihoods .9 and .2 from memory. The book prints 62,155 from a posterior rounded to .05; exact
 * arithmetic gives 62,100, which is what an engine that rounds nothing must say.
 */
it('the potato virus comes to 62,100 without rounding inside', () => {
  const chances = [
    [0.9, 0.1],
    [0.2, 0.8],
  ]
  const payoffs = [
    [-20_000, 90_000],
    [30_000, 30_000],
  ]
  const cost = 1
  const model = decision([0.3, 0.7], ['positive', 'negative'], chances, cost)
  const perfect = 0.3 * 30_000 + 0.7 * 90_000
  const { stopping, proposals } = planned(model, payoffs)
  expect(perfect - stopping).toBeCloseTo(57_000, 6)
  expect(perfect - (proposals[0]!.expectedMinutes! - cost)).toBeCloseTo(62_100, 6)
})

/**
 * Order by probability over cost: two boxes, 3.4 and 4.4 confirmed; that every item must be paid for,
 * the last one included, is what makes it the best order (Kalagnanam & Henrion 1990).
 */
describe('fitting one after another', () => {
  it('costs 3.4 and 4.4 for the two boxes, as published', () => {
    const boxes = [
      { probability: 0.8, cost: 3 },
      { probability: 0.2, cost: 2 },
    ]
    expect(fitCost(boxes, [0, 1])).toBeCloseTo(3.4, 12)
    expect(fitCost(boxes, [1, 0])).toBeCloseTo(4.4, 12)
    expect(fitOrder(boxes)).toEqual([0, 1])
  })

  it('goes by probability over cost, and by that order pays least among all orders', () => {
    const fits = [
      { probability: 0.5, cost: 40 },
      { probability: 0.3, cost: 6 },
      { probability: 0.2, cost: 10 },
    ]
    const orders = [0, 1, 2].flatMap((a) =>
      [0, 1, 2].filter((b) => b !== a).map((b) => [a, b, 3 - a - b]),
    )
    const best = fitCost(fits, fitOrder(fits))
    expect(orders).toHaveLength(6)
    expect(Math.min(...orders.map((order) => fitCost(fits, order)))).toBeCloseTo(best, 12)
    expect(fitOrder(fits)).toEqual([1, 2, 0])
  })
})
