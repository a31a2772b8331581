import { describe, expect, it } from 'vitest'
import { testability } from '../../server/diagnosis/testability/testability.ts'
import { modelFromTable } from '../support/tables.ts'

/**
 * The six-state table of Pattipati & Alexandridis 1990 (from memory) with tests t1 and t4 alone. The
 * three figures are a hand calculation of ours on that table, not published; the definitions (rate-
 * weighted, isolation as a share of the detected) are confirmed in a secondary source for IEEE Std 1522.
 */
describe('testability by hand on six states', () => {
  // The healthy state has less weight than in the table, or one test would be enough to call it that.
  const priors = { none: 0.3, s1: 0.01, s2: 0.02, s3: 0.1, s4: 0.05, s5: 0.12 }
  const found = testability(
    modelFromTable(priors, { t1: [0, 0, 0, 1, 1, 1], t4: [0, 0, 1, 1, 0, 1] }),
  )

  it('detects 0.29 of 0.30, isolates 0.07 of 0.29 to one part and all to two', () => {
    expect(found.detected).toBeCloseTo(0.29 / 0.3, 10)
    expect(found.isolated[0]).toBeCloseTo(0.07 / 0.29, 10)
    expect(found.isolated[1]).toBeCloseTo(1, 10)
    expect(found.missed).toEqual(['s1'])
  })
})
