import { expect, it } from 'vitest'
import { belief } from '../../server/diagnosis/belief/belief.ts'
import type { Evidence } from '../../server/diagnosis/model/model.ts'
import { measure } from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { handVolts, workshop } from '../measure/doubt/meters.ts'
import { modelFromTable } from '../support/tables.ts'
import { over, simulate } from './simulator.ts'

const low = 100
const rpm = 500
const quantity = quantities['peak-voltage']

/**
 * What two windings behind one flywheel of twelve poles give at a speed, in ngspice: flux linkage as the
 * current of 1 H, so that V = dΨ/dt (Faraday). Each is said by its volts at 500 rpm.
 */
async function given(volts: readonly [number, number], at: number): Promise<number[]> {
  const hz = (12 * at) / 120
  const flux = (peak: number) => peak / (2 * Math.PI * ((12 * rpm) / 120))
  const vectors = await simulate(`* two windings at one speed
I1 0 a SIN(0 ${flux(volts[0])} ${hz})
L1 a 0 1
I2 0 b SIN(0 ${flux(volts[1])} ${hz})
L2 b 0 1
.tran 10u 0.12 0 10u
.end`)
  return ['v(a)', 'v(b)'].map((node) => over(vectors, node, 0.04).most)
}

/** One of two windings gives too little, or neither; each row right but for one in a hundred. */
const model = (() => {
  const sure = modelFromTable(
    { one: 0.25, other: 0.25, none: 0.5 },
    {
      one: ['low', 'right', 'right'],
      other: ['right', 'low', 'right'],
    },
  )
  const chances = (row: readonly number[]) => [0, row[0]! * 0.98 + 0.01, row[1]! * 0.98 + 0.01, 0]
  return {
    ...sure,
    checks: sure.checks.map((check) => ({
      ...check,
      outcomes: quantity.bands,
      chances: check.chances.map(chances),
    })),
  }
})()

function evidence(volts: readonly number[]): Evidence[] {
  return ['one', 'other'].map((check, i) => {
    const { evidence, bySpeed } = measure(
      {
        quantity,
        ranges: handVolts,
        partTemperature: workshop,
        // Three pulls alike: none of them was a weak one.
        touches: [1, 2, 3].map(() => ({ kind: 'value', value: volts[i]! })),
      },
      { limits: { low }, at: workshop, material: 'copper', rpm },
    )
    return {
      check,
      likelihoods: evidence,
      shared: { of: bySpeed!.of, likelihoods: bySpeed!.evidence },
    }
  })
}

/** The same in closed form: V·500/n against the limit, with 500/n even from 500/800 to 500/300. */
function closedForm(volts: readonly number[]): number[] {
  const [least, most] = [rpm / 800, rpm / 300]
  const edges = volts.map((v) => Math.min(most, Math.max(least, low / v)))
  const bounds = [least, ...edges.toSorted((a, b) => a - b), most]
  const weights = model.cutSets.map(({ prior }, c) => {
    const pieces = bounds.slice(1).map((to, i) => {
      const from = bounds[i]!
      const chance = model.checks.reduce((product, { chances }, j) => {
        const right = (from + to) / 2 > edges[j]!
        return product * chances[c]![right ? 2 : 1]!
      }, 1)
      return (to - from) * chance
    })
    return prior * pieces.reduce((a, b) => a + b)
  })
  const sum = weights.reduce((a, b) => a + b)
  return weights.map((weight) => weight / sum)
}

it.each([
  ['both good, a slow pull', [130, 130], 330, 'none'],
  ['both good, a brisk pull', [130, 130], 520, 'none'],
  ['the other at half, a slow pull', [130, 55], 330, 'other'],
  ['the other at half, a brisk pull', [130, 55], 520, 'other'],
] as const)(
  'two windings at an unknown speed, %s, come to the closed form',
  async (_, volts, at, which) => {
    const read = await given(volts, at)
    expect(read[0]! / read[1]!).toBeCloseTo(volts[0] / volts[1], 3)
    expect(read[0]!).toBeCloseTo((volts[0] * at) / rpm, 0)
    const now = belief(model, evidence(read))
    // The rule has twelve speeds, and the pulls of one person differ by up to a tenth.
    for (const [c, p] of closedForm(read).entries()) {
      expect(Math.abs(now[c]! - p)).toBeLessThan(0.1)
    }
    expect(now.indexOf(Math.max(...now))).toBe(['one', 'other', 'none'].indexOf(which))
    expect(Math.max(...now)).toBeGreaterThan(0.8)
  },
)
