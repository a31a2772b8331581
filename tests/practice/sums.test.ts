import { describe, expect, it } from 'vitest'
import { nextOf, sumsOf } from '../../server/practice/progress/sums.ts'
import type { Result } from '../../server/practice/record/events.ts'

const result = (partKind: string, right: boolean, minutes = 10): Result => ({
  ...{ partKind, right, minutes, toolMinutes: 10, bought: right ? 0 : 1 },
  ...{ complaint: `${partKind}-trouble`, machine: 'wren' },
})

describe('what to practise next', () => {
  it('is the kind that goes worst, with the complaint in which it was missed last', () => {
    const sums = sumsOf([
      result('pickup', true),
      result('winding', false),
      result('pickup', true),
      result('winding', true),
    ])
    expect(sums.map(({ partKind }) => partKind)).toEqual(['winding', 'pickup'])
    expect(sums[0]).toMatchObject({ rounds: 2, right: 1, minutes: 20, missed: ['winding-trouble'] })
    expect(nextOf(sums)?.partKind).toBe('winding')
  })

  it('is the slow one, where all are right', () => {
    const sums = sumsOf([result('pickup', true), result('winding', true, 40)])
    expect(nextOf(sums)?.partKind).toBe('winding')
  })

  it('is nothing in particular where all goes well, or nothing was tried', () => {
    expect(nextOf(sumsOf([result('pickup', true), result('winding', true, 12)]))).toBeUndefined()
    expect(nextOf(sumsOf([]))).toBeUndefined()
  })
})
