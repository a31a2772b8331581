import { describe, expect, it } from 'vitest'
import { presentProgress } from '../../server/practice/progress/present.ts'
import type { Result } from '../../server/practice/record/events.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const result = (more: Partial<Result>): Result => ({
  ...{ partKind: 'winding', complaint: 'no-spark', machine: 'pedlar-1c' },
  ...{ right: false, minutes: 3, toolMinutes: 20, bought: 0 },
  ...more,
})

const progressOf = (...results: readonly Result[]) =>
  presentProgress(
    shippedKnowledge(),
    'Nan',
    results.map((each, i) => ({ id: i + 1, openedAt: new Date(0), result: each })),
    [],
  )

describe('how rounds have gone', () => {
  it('leaves out where the tool did not find it either, and says so', () => {
    const { says, rows } = progressOf(result({ right: true }), result({ toolMissed: true }))
    expect(says).toBe(
      '1 round, 1 of them right. 1 round is not counted, where the tool did not find it either.',
    )
    expect(rows).toMatchObject([{ rounds: '1', right: '1' }])
    expect(progressOf(result({ toolMissed: true })).rows).toEqual([])
  })

  it('counts what the tool found, and a good part that was bought', () => {
    const wrong = progressOf(result({}), result({ toolMissed: true, bought: 1 }))
    expect(wrong.says).toBe('2 rounds, 0 of them right.')
    expect(wrong.rows).toMatchObject([{ rounds: '2', right: '0' }])
  })
})
