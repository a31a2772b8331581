import { describe, expect, it } from 'vitest'
import { wilson } from '../../server/diagnosis/rates/calibration.ts'
import { dirichletMean } from '../../server/diagnosis/rates/shares.ts'

/**
 * The poll before an election in Gelman and others, Bayesian Data Analysis, section 3.4: of 1447 asked,
 * 727, 583 and 137; a uniform prior over three, a Dirichlet of (1, 1, 1), gives a posterior of (728, 584,
 * 138) and a mean difference of 0.10 between the first two. From memory.
 */
describe('the posterior mean of a Dirichlet', () => {
  it('is that of the poll', () => {
    const means = dirichletMean([1 / 3, 1 / 3, 1 / 3], 3, [727, 583, 137])
    expect(means.map((mean) => mean * 1450)).toEqual(
      [728, 584, 138].map((parameter) => expect.closeTo(parameter, 9)),
    )
    expect(means[0]! - means[1]!).toBeCloseTo(0.1, 2)
  })

  it('is Laplace’s rule of succession for two causes and a prior worth two', () => {
    expect(dirichletMean([1 / 2, 1 / 2], 2, [9, 1])[0]).toBeCloseTo(10 / 12, 12)
  })
})

/** Newcombe, Statistics in Medicine 17, 1998, table I, method 3 (the score without correction). From memory. */
describe('the interval of a share', () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i is that of the table', (right, all, from, to) => {
    const [low, high] = wilson(right, all)
    expect(low).toBeCloseTo(from, 4)
    expect(high).toBeCloseTo(to, 4)
  })
})
