import { expect, it } from 'vitest'
import { bandOf } from '../../server/measure/decide/bands.ts'
import type { Decision } from '../../server/measure/decide/decision.ts'
import { accuracy, rangeFor } from '../../server/measure/doubt/meter.ts'
import { measure } from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import type { Reading } from '../../server/measure/reading/reading.ts'
import { meters } from '../measure/doubt/meters.ts'
import { type Draw, drawParts, netlist, type Part, seeded } from './parts.ts'
import { operatingPoint } from './simulator.ts'

const { resistance } = quantities
const decisions = ['conforms', 'does not conform', 'undecided'] as const

/**
 * 200 windings, healthy and faulty, from −30 to 120 °C, touched one to three times cleanly or poorly, in
 * a circuit simulator, read on one of three meters with errors drawn within its accuracy. The tool's
 * decision stands beside plain comparison of the first touch with the limits.
 */
it('200 parts: hardly a healthy one is condemned, and no more faulty ones pass than plainly', async () => {
  const bench = await judgeParts(20)
  console.table(
    [true, false].flatMap((healthy) =>
      (['tool', 'plain'] as const).map((by) => ({
        parts: healthy ? 'healthy' : 'faulty',
        by: by === 'tool' ? 'Coilhound' : 'plain comparison',
        ...Object.fromEntries(decisions.map((each) => [each, bench.count(healthy, by, each)])),
      })),
    ),
  )
  expectSound(bench)
  // A tool that never decides would pass that: most of what a meter can tell must be told.
  expect(bench.count(true, 'tool', 'conforms')).toBeGreaterThan(bench.healthy * 0.4)
  expect(bench.count(false, 'tool', 'does not conform')).toBeGreaterThan(bench.faulty * 0.4)
  // The cases are hard enough to need the tool.
  expect(bench.count(true, 'plain', 'does not conform') / bench.healthy).toBeGreaterThan(0.2)
  expect(bench.count(false, 'plain', 'conforms')).toBeGreaterThan(3)
})

it('another thousand parts fare no worse', async () => {
  const benches: Bench[] = []
  for (const seed of [1, 2, 3, 4, 5]) benches.push(await judgeParts(seed))
  const total = (of: (bench: Bench) => number) => benches.reduce((sum, bench) => sum + of(bench), 0)
  expectSound({
    healthy: total(({ healthy }) => healthy),
    faulty: total(({ faulty }) => faulty),
    count: (...which) => total(({ count }) => count(...which)),
  })
})

interface Bench {
  readonly healthy: number
  readonly faulty: number
  readonly count: (healthy: boolean, by: 'tool' | 'plain', decision: Decision) => number
}

function expectSound({ healthy, faulty, count }: Bench) {
  expect(Math.min(healthy, faulty)).toBeGreaterThan(80)
  expect(count(true, 'tool', 'does not conform') / healthy).toBeLessThanOrEqual(0.01)
  expect(count(false, 'tool', 'conforms')).toBeLessThanOrEqual(count(false, 'plain', 'conforms'))
}

async function judgeParts(seed: number): Promise<Bench> {
  const random = seeded(seed)
  const parts = drawParts(200, random)
  const voltage = await operatingPoint(netlist(parts))
  const judged = parts.map((part, p) => {
    const readings = part.touches.map((_, t) => voltage(`m${p}_${t}`) / part.current)
    return { healthy: part.healthy, ...decide(part, readings, random) }
  })
  const healthy = judged.filter((each) => each.healthy).length
  return {
    healthy,
    faulty: judged.length - healthy,
    count: (which, by, decision) =>
      judged.filter((each) => each.healthy === which && each[by] === decision).length,
  }
}

function decide(part: Part, readings: readonly number[], random: Draw) {
  const show = meterOf(part, random)
  const zero = part.zeroed ? show(part.leads + random() * 0.02) : undefined
  const touches = readings.map(show)
  const { decision } = measure(
    {
      quantity: resistance,
      ranges: meters[part.meter],
      zero: zero?.kind === 'value' ? zero.value : undefined,
      partTemperature: part.told,
      touches,
      awkward: part.awkward,
    },
    {
      limits: part.limits,
      at: { celsius: 20, halfWidth: 0 },
      material: 'copper',
    },
  )
  return { tool: decision, plain: plainly(touches[0]!, part) }
}

function plainly(reading: Reading, { limits }: Part): Decision {
  if (reading.kind !== 'value') return 'does not conform'
  const band = bandOf(reading.value, limits, resistance)
  return band === 'in range' ? 'conforms' : 'does not conform'
}

/**
 * A meter whose errors are drawn once, within its accuracy: a gain, and an offset of all counts but one,
 * with the last count left to flicker from reading to reading.
 */
function meterOf(part: Part, random: Draw): (ohms: number) => Reading {
  const ranges = meters[part.meter]
  const [gain, offset] = [2 * random() - 1, 2 * random() - 1]
  return (ohms) => {
    const range = rangeFor(ranges, ohms)
    if (range === null) return { kind: 'over' }
    const proportional = (gain * ohms * range.percent) / 100
    const shift = (offset * (range.counts - 1) + (2 * random() - 1) / 2) * range.digit
    const shown = Math.round((ohms + proportional + shift) / range.digit) * range.digit
    expect(Math.abs(shown - ohms)).toBeLessThanOrEqual(accuracy(range, ohms) * (1 + 1e-9))
    return { kind: 'value', value: Math.max(0, shown) }
  }
}
