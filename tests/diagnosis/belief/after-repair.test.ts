import { describe, expect, it } from 'vitest'
import {
  afterRepair,
  checksThatSaw,
  checksThatSawElsewhere,
} from '../../../server/diagnosis/belief/after-repair.ts'
import { walk } from '../../../server/diagnosis/walk.ts'
import { modelFromTable, saw } from '../../support/tables.ts'

const model = modelFromTable(
  { none: 0.1, winding: 0.5, lead: 0.3, coil: 0.1 },
  {
    ohms: ['good', 'open', 'good', 'good'],
    tower: ['good', 'good', 'good', 'open'],
    swap: ['same', 'same', 'moves', 'moves'],
  },
)

describe('a complaint that is still there after a repair', () => {
  it('leaves the other explanations in their proportions', () => {
    const left = afterRepair(model, ['winding'])
    expect(left.cutSets.map(({ parts }) => parts.join())).toEqual(['', 'lead', 'coil'])
    const priors = left.cutSets.map(({ prior }) => prior)
    for (const [c, prior] of [0.2, 0.6, 0.2].entries()) expect(priors[c]).toBeCloseTo(prior, 12)
  })

  it('opens the checks again that may have shown the repaired part, and no others', () => {
    expect(checksThatSaw(model, ['winding'])).toEqual(['ohms'])
    expect(checksThatSaw(model, ['lead'])).toEqual(['swap'])
  })

  it('opens those again that showed a cause outside the tree, where that was put right', () => {
    const wider = modelFromTable(
      { none: 0.4, winding: 0.3, lead: 0.3 },
      {
        breath: ['blocked', 'free', 'free'],
        ohms: ['good', 'open', 'good'],
        swap: ['same', 'same', 'moves'],
      },
    )
    const seen = (breath: string) =>
      checksThatSawElsewhere(wider, [
        saw(wider, 'ohms', 'good'),
        saw(wider, 'breath', breath),
        saw(wider, 'swap', 'same'),
      ])
    expect(seen('blocked')).toEqual(['breath'])
    expect(seen('free')).toEqual([])
  })

  it('is walked on to the second part of a pair', () => {
    const left = afterRepair(model, ['winding'])
    const evidence = [saw(left, 'swap', 'moves'), saw(left, 'tower', 'open')]
    const { step } = walk(left, { evidence, impossible: new Set() })
    expect(step).toMatchObject({ kind: 'named', parts: ['coil'] })
  })

  it('stays as it is where nothing was repaired', () => {
    expect(afterRepair(model, [])).toBe(model)
  })

  it('is refused where nothing else is left', () => {
    const bare = modelFromTable({ winding: 1 }, { ohms: ['open'] })
    expect(() => afterRepair(bare, ['winding'])).toThrow(/nothing is left/)
  })
})
