import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dirichletMean, presentShares, tablesStay } from '../../../server/diagnosis/rates/shares.ts'

const causes = 6
const sum = (all: readonly number[]) => all.reduce((total, each) => total + each, 0)
const tables = fc
  .array(fc.integer({ min: 1, max: 90 }), { minLength: causes, maxLength: causes })
  .map((rates) => rates.map((rate) => rate / sum(rates)))
const counts = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: causes, maxLength: causes })
const one = fc.nat(causes - 1)
const oneMore = (all: readonly number[], at: number) => all.map((n, i) => (i === at ? n + 1 : n))

describe('the shares of causes', () => {
  it('are those of the tables where nothing was confirmed', () => {
    fc.assert(
      fc.property(tables, (prior) => {
        const shares = presentShares(prior, [], [])
        for (const [i, share] of shares.entries()) expect(share).toBeCloseTo(prior[i]!, 12)
      }),
    )
  })

  it.each(['own', 'others'] as const)(
    'rise where one more is confirmed, and nowhere else: %s',
    (whose) => {
      fc.assert(
        fc.property(tables, counts, counts, one, (prior, own, others, at) => {
          const before = presentShares(prior, own, others)
          const after =
            whose === 'own'
              ? presentShares(prior, oneMore(own, at), others)
              : presentShares(prior, own, oneMore(others, at))
          for (const [i, share] of after.entries()) {
            if (i === at) expect(share).toBeGreaterThan(before[i]!)
            else expect(share).toBeLessThanOrEqual(before[i]! + 1e-15)
          }
        }),
      )
    },
  )

  it('make one whole, none less than its part of the tables and none all there is', () => {
    fc.assert(
      fc.property(tables, counts, counts, (prior, own, others) => {
        const shares = presentShares(
          prior,
          own.map((n) => n * 1000),
          others,
        )
        expect(sum(shares)).toBeCloseTo(1, 10)
        for (const [i, share] of shares.entries()) {
          const least = tablesStay * prior[i]!
          expect(share).toBeGreaterThan(least)
          expect(share).toBeLessThan(1 - tablesStay + least)
        }
      }),
    )
  })

  it('go by one’s own family more than by all others', () => {
    const prior = Array<number>(causes).fill(1 / causes)
    const [own, other, untouched] = presentShares(prior, [10, 0], [0, 10])
    expect(own! - untouched!).toBeCloseTo(4 * (other! - untouched!), 12)
    const flood = presentShares(prior, [20, 0], [0, 5000])
    expect(flood[0]).toBeCloseTo(flood[1]!, 12)
  })

  it('come to half tables and half shop after forty', () => {
    const [usual, rare] = dirichletMean([0.05, 0.95], 40, [40, 0])
    expect(usual).toBeCloseTo(0.525, 12)
    expect(rare).toBeCloseTo(0.475, 12)
  })
})
