import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calledBad } from '../../../server/measure/decide/many.ts'

describe('the step-down rule for many readings', () => {
  /**
   * The example that the documentation of R's `p.adjust` and many textbooks give, from memory: of 0.01, 0.04,
   * 0.03 and 0.005 at 5 %, Holm's adjusted chances are 0.03, 0.06, 0.06 and 0.02, so the first and the last
   * are rejected and the other two are not.
   */
  it('rejects as the published example does', () => {
    expect(calledBad([0.01, 0.04, 0.03, 0.005], 0.05)).toEqual([true, false, false, true])
  })

  it('is Bonferroni’s rule for the first, and stops at the first that fails', () => {
    expect(calledBad([0.0026, 0.001, 1, 1], 0.01)).toEqual([true, true, false, false])
    expect(calledBad([0.0026, 0.9, 1, 1], 0.01)).toEqual([false, false, false, false])
  })

  it('never calls bad what is more likely good than something it does not call bad', () => {
    const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 })
    fc.assert(
      fc.property(chances, (all) => {
        const called = calledBad(all, 0.01)
        const worst = Math.max(0, ...all.filter((_, i) => called[i]))
        for (const [i, chance] of all.entries()) {
          if (!called[i]) expect(chance).toBeGreaterThanOrEqual(worst)
          else expect(chance).toBeLessThanOrEqual(0.01)
        }
      }),
    )
  })

  /** Holm's theorem: whatever the readings hang together, over all of them good parts are called bad at most so often. */
  it('keeps its level over twenty good parts at the very edge of their limits', () => {
    let seed = 7
    const random = () => {
      seed = (seed * 48271) % 2147483647
      return seed / 2147483647
    }
    const rounds = 20_000
    let wrong = 0
    for (let round = 0; round < rounds; round += 1) {
      if (calledBad(Array.from({ length: 20 }, random), 0.01).some(Boolean)) wrong += 1
    }
    expect(wrong / rounds).toBeLessThan(0.013)
    expect(wrong / rounds).toBeGreaterThan(0.007)
  })
})
