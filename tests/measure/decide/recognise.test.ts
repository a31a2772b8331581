import { describe, expect, it } from 'vitest'
import {
  type AsRead,
  type Known,
  recognise as recognised,
} from '../../../server/measure/decide/recognise.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import type { Limits } from '../../../server/measure/reading/reading.ts'

const exciter = { low: 310, high: 420 }
const pickup: Known = { part: 'pickup', limits: { low: 142, high: 222 }, sameConnector: true }
const lighting: Known = {
  part: 'lighting-winding',
  limits: { low: 0.4, high: 0.8 },
  sameConnector: false,
}
const others = [pickup, lighting]
const read = (value: number, u = value / 200) => ({ value, u, asRead: value })
const { mistakes } = quantities.resistance
const recognise = (reading: AsRead, limits: Limits, beside: readonly Known[]) =>
  recognised(mistakes, reading, limits, beside)

describe('volts that no flywheel gives', () => {
  const far = (value: number, limits: Limits) => recognised(['far above'], read(value), limits, [])

  it('are asked about where the sheet has no high limit to be above', () => {
    expect(far(101, { low: 11 })).toEqual({ kind: 'far above', times: expect.closeTo(9.18, 2) })
    expect(far(60, { low: 11 })).toBeNull()
    expect(far(101, { low: 11, high: 14.5 })).toBeNull()
  })
})

describe('a reading that tells how it was taken', () => {
  it('in range tells nothing', () => {
    expect(recognise(read(350), exciter, others)).toBeNull()
    expect(recognise(read(305, 3), exciter, others)).toBeNull()
  })

  it('a thousand times off is a prefix or a range misread', () => {
    const [kilo, milli] = [0.35, 350_000].map((value) => recognise(read(value), exciter, others))
    expect(kilo).toEqual({ kind: 'thousand off', factor: 1000, instead: 350 })
    expect(milli).toEqual({ kind: 'thousand off', factor: 0.001, instead: 350 })
    // At −25 °C a winding of 320 Ω reads 263 Ω, and 550 Ω at no temperature is one of 420 Ω.
    expect(recognise(read(0.263), exciter, others)).toMatchObject({ kind: 'thousand off' })
    expect(recognise(read(0.55), exciter, [])).toBeNull()
    // The leads are taken off what was read in kΩ, so it is no use comparing what is left.
    const corrected = { value: 0.125, u: 0.25, asRead: 0.35 }
    expect(recognise(corrected, exciter, others)).toMatchObject({ kind: 'thousand off' })
  })

  it('of next to nothing is a short, however coarse the meter', () => {
    expect(recognise({ value: -0.1, u: 0.25, asRead: 0.1 }, exciter, others)).toBeNull()
  })

  it('within the limits of a neighbour was taken at the wrong pins', () => {
    expect(recognise(read(180), exciter, others)).toEqual({ kind: 'wrong pins', part: 'pickup' })
    const elsewhere = { ...pickup, sameConnector: false }
    expect(recognise(read(215), exciter, [elsewhere])).toBeNull()
  })

  it('that a coarse meter took fits no neighbour by chance', () => {
    const coarse = { part: 'primary', limits: { low: 0.24, high: 0.36 }, sameConnector: true }
    expect(recognise(read(1, 0.4), { low: 5, high: 8 }, [coarse])).toBeNull()
  })

  it('as of both paths side by side has the harness left plugged', () => {
    const mistake = recognise(read(125), exciter, [{ ...pickup, sameConnector: false }])
    expect(mistake).toEqual({
      kind: 'harness left plugged',
      part: 'pickup',
      expected: { low: expect.closeTo(97.4, 1), high: expect.closeTo(145.2, 1) },
    })
  })

  it('of a high path a little low has fingers across it', () => {
    const secondary = { low: 12_000, high: 15_000 }
    const held = (12_500 * 200_000) / 212_500
    expect(recognise(read(held, 20), secondary, [])).toMatchObject({ kind: 'fingers' })
    expect(recognise(read(9000, 20), secondary, [])).toBeNull()
    // Fingers hide behind nothing this low.
    expect(recognise(read(300, 1), exciter, [])).toBeNull()
  })

  it('of copper a little low may only be colder than was said', () => {
    const secondary = { low: 8000, high: 10_000 }
    const cold = { ...read(7600, 20), copper: 1 }
    expect(recognise(cold, secondary, [])).toEqual({ kind: 'colder' })
    expect(recognise({ ...cold, copper: 0 }, secondary, [])).toMatchObject({ kind: 'fingers' })
    const twin = { part: 'twin', limits: { low: 30_000, high: 60_000 }, sameConnector: false }
    expect(recognise(cold, secondary, [twin])).toEqual({ kind: 'colder' })
    // No cold takes off as much as that.
    const half = { part: 'twin', limits: secondary, sameConnector: false }
    const beside = { ...read(4500, 20), copper: 1 }
    expect(recognise(beside, secondary, [half])).toMatchObject({ kind: 'harness left plugged' })
  })

  it('of hundreds of kΩ on a path that must not be has fingers for a path', () => {
    const path = { low: 1e6 }
    expect(recognise(read(300_000), path, [])).toMatchObject({ kind: 'fingers' })
    expect(recognise(read(2000), path, [])).toBeNull()
    expect(recognise(read(5e6), path, [])).toBeNull()
  })

  it('tells only of the mistakes that are looked for in its quantity, the first of them first', () => {
    const both = { ...pickup, limits: { low: 0.3, high: 0.4 } }
    expect(recognised([], read(0.35), exciter, [both])).toBeNull()
    expect(recognised(['wrong pins'], read(0.35), exciter, [])).toBeNull()
    const order = ['wrong pins', 'thousand off'] as const
    expect(recognised(order, read(0.35), exciter, [both])).toMatchObject({ kind: 'wrong pins' })
    expect(recognise(read(0.35), exciter, [both])).toMatchObject({ kind: 'thousand off' })
  })

  it('of a part that is broken tells of no mistake', () => {
    for (const value of [12, 270, 500, 900, 50_000]) {
      expect(recognise(read(value), exciter, others)).toBeNull()
    }
  })
})
