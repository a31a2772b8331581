import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crankAngle, pistonTravel } from '../../server/measure/correct/crank.ts'
import { parseReading } from '../../server/measure/reading/parse.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'

/** One inch is 25.4 mm exactly: international yard and pound agreement of 1959, NIST SP 811, ISO 31-1. */
describe('an inch', () => {
  it.each([
    ['1 in', 25.4],
    ['0.001 in', 0.0254],
    ['1 thou', 0.0254],
    ['0.5 in', 12.7],
    ['1.25 in', 31.75],
  ])('of "%s" is %d mm to the last bit', (typed, mm) => {
    expect(parseReading(typed, quantities.gap)).toEqual({
      ok: true,
      reading: { kind: 'value', value: mm },
    })
  })
})

const radians = (degrees: number) => (degrees * Math.PI) / 180

/** Where the small end stands, by the rod alone: halved until pin and small end are a rod apart. */
function travelByHalving(degrees: number, { stroke, rod }: { stroke: number; rod: number }) {
  const r = stroke / 2
  const [x, y] = [r * Math.sin(radians(degrees)), r * Math.cos(radians(degrees))]
  let [low, high] = [y, r + rod]
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2
    if (Math.hypot(x, middle - y) < rod) low = middle
    else high = middle
  }
  return r + rod - low
}

const cranks = fc.record({
  stroke: fc.double({ min: 20, max: 120, noNaN: true }),
  ratio: fc.double({ min: 1.2, max: 3, noNaN: true }),
})
const angles = fc.double({ min: 1, max: 179, noNaN: true })

describe('a crank', () => {
  it('moves its piston as pin, rod and cylinder do when they are drawn', () => {
    fc.assert(
      fc.property(cranks, angles, ({ stroke, ratio }, degrees) => {
        const crank = { stroke, rod: ratio * stroke }
        expect(pistonTravel(degrees, crank)).toBeCloseTo(travelByHalving(degrees, crank), 8)
      }),
    )
  })

  it('is turned back to the angle by the travel', () => {
    fc.assert(
      fc.property(cranks, angles, ({ stroke, ratio }, degrees) => {
        const crank = { stroke, rod: ratio * stroke }
        expect(crankAngle(pistonTravel(degrees, crank), crank)).toBeCloseTo(degrees, 5)
      }),
    )
  })

  it('is at the top, and at the bottom a stroke below it', () => {
    const crank = { stroke: 49, rod: 92 }
    expect(pistonTravel(0, crank)).toBe(0)
    expect(pistonTravel(180, crank)).toBeCloseTo(49, 12)
    expect(crankAngle(0, crank)).toBe(0)
    expect(crankAngle(49, crank)).toBeCloseTo(180, 4)
  })

  // s ≈ r·(1 − cos φ + λ/4·(1 − cos 2φ)), λ = r/l: the two terms that handbooks on engines give; from memory. The next
  // one is λ³/64·(…), at most a tenth of a per cent here.
  it.each([10, 20, 30, 45, 60])('follows the two terms of the handbooks at %d°', (degrees) => {
    const crank = { stroke: 49, rod: 92 }
    const [r, lambda] = [24.5, 24.5 / 92]
    const phi = radians(degrees)
    const series = r * (1 - Math.cos(phi) + (lambda / 4) * (1 - Math.cos(2 * phi)))
    expect(pistonTravel(degrees, crank) / series).toBeCloseTo(1, 2)
  })

  it.each([
    [-1, { stroke: 49, rod: 92 }],
    [181, { stroke: 49, rod: 92 }],
    [20, { stroke: 49, rod: 24 }],
  ])('is refused where it cannot be: %d° of %o', (degrees, crank) => {
    expect(() => pistonTravel(degrees, crank)).toThrow(RangeError)
  })
})
