import { describe, expect, it } from 'vitest'
import { byTenths, hitsAmong } from '../../../server/diagnosis/rates/calibration.ts'

const said = (chance: number, right: boolean) => ({ chance, right })

describe('what was said, by tenths', () => {
  it('counts a chance on a border as it is printed, in the tenth above, and certainty in the last', () => {
    const rows = byTenths([
      said(0.9, true),
      said(1, true),
      said(0.895, false),
      said(0.894, false),
      said(0.3, true),
    ])
    expect(rows.map(({ from, said, right }) => [from, said, right])).toEqual([
      [0.3, 1, 1],
      [0.8, 1, 0],
      [0.9, 3, 2],
    ])
  })

  it('knows nothing of a share that nothing was seen of', () => {
    expect(hitsAmong([])).toEqual({ said: 0, right: 0, interval: [0, 1] })
  })

  it('is never certain, however often it was right', () => {
    const { interval } = hitsAmong(Array.from({ length: 40 }, () => said(0.95, true)))
    expect(interval[0]).toBeGreaterThan(0.9)
    expect(interval[0]).toBeLessThan(0.95)
    expect(interval[1]).toBe(1)
  })
})
