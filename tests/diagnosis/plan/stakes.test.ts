import { describe, expect, it } from 'vitest'
import { stakesOf } from '../../../server/diagnosis/plan/stakes.ts'
import { smallCase } from '../../support/small-case.ts'

describe('from what probability on something is named', () => {
  const { nameFrom } = stakesOf({
    ...smallCase.model,
    wrongMinutes: new Map([
      ['cheap', 20],
      ['dear', 200],
    ]),
  })

  it('is more than nine in ten for what is cheap to fit in vain, and more for what is dear', () => {
    expect(nameFrom(['cheap'])).toBe(0.92)
    expect(nameFrom(['dear'])).toBe(0.93)
  })

  it('is most for nothing in this tree: whoever looks elsewhere in vain starts over', () => {
    expect(nameFrom([])).toBe(0.95)
  })
})
