import { describe, expect, it } from 'vitest'
import { decide } from '../../../server/measure/decide/decision.ts'

describe('the decision', () => {
  it.each([
    [0, 1, 0, 'conforms'],
    [0.05, 0.95, 0, 'conforms'],
    [0.0501, 0.9499, 0, 'undecided'],
    [0.5, 0, 0.5, 'undecided'],
    [0.949, 0.001, 0.05, 'undecided'],
    [0.95, 0.05, 0, 'does not conform'],
    [0, 0.05, 0.95, 'does not conform'],
  ] as const)('for %f below, %f within, %f above is: %s', (below, within, above, decision) => {
    expect(decide({ below, within, above })).toBe(decision)
  })
})
