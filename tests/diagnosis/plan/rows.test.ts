import { describe, expect, it } from 'vitest'
import type { Check } from '../../../server/diagnosis/model/model.ts'
import { foreseenRows, rowsFor, rowsOf } from '../../../server/diagnosis/plan/rows.ts'

const whole = [0.9, 0.1]
const check: Check = {
  id: 'x',
  minutes: 1,
  setups: [],
  outcomes: ['good', 'bad'],
  chances: [whole, [0.25, 0.75], whole, [0.9, 0.1], [0.25, 0.75]],
}

describe('the rows of a check', () => {
  it('are kept once each, whether the cut sets share one array or have copies of it', () => {
    const { chances, of, outcomeCount } = rowsOf(check)
    expect([...chances]).toEqual([0.9, 0.1, 0.25, 0.75])
    expect([...of]).toEqual([0, 1, 0, 0, 1])
    expect(outcomeCount).toBe(2)
  })

  it('come with their logarithms, and for some of the cut sets only', () => {
    const some = rowsFor(rowsOf(check), [4, 0])
    expect([...some.of]).toEqual([1, 0])
    expect([...some.logs]).toEqual([0.9, 0.1, 0.25, 0.75].map(Math.log))
  })

  it('have the blur of the meter laid over them when they are foreseen', () => {
    const blur = [
      [0.75, 0.25],
      [0.5, 0.5],
    ]
    const { chances, of } = foreseenRows({ ...check, blur })
    expect(chances[0]).toBeCloseTo(0.9 * 0.75 + 0.1 * 0.5, 12)
    expect(chances[3]).toBeCloseTo(0.25 * 0.25 + 0.75 * 0.5, 12)
    expect([...of]).toEqual([0, 1, 0, 0, 1])
  })

  it('are one where the meter cannot tell them apart', () => {
    const blind = [
      [0.5, 0.5],
      [0.5, 0.5],
    ]
    const { chances, of } = foreseenRows({ ...check, blur: blind })
    expect([...chances]).toEqual([0.5, 0.5])
    expect([...of]).toEqual([0, 0, 0, 0, 0])
  })
})
