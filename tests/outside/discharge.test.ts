import { describe, expect, it } from 'vitest'
import { commonAdaptor } from '../../server/measure/correct/adaptor.ts'
import { parseQuantityText } from '../../server/measure/reading/parse.ts'
import { adaptor } from '../../server/practice/world/adaptor.ts'
import { node } from '../../server/practice/world/node.ts'
import { ohmsBetween } from '../../server/practice/world/solve.ts'
import { seeded } from '../bench/random.ts'
import { asItCame, drawWorld } from '../person/world/draw.ts'
import { insides } from '../person/world/net/boxes.ts'
import { nowAt } from '../person/world/now.ts'
import { capacitor } from '../person/world/systems/ignition.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { simulate } from './simulator.ts'

/** V left on a capacitor that was charged to `volts`, after so many seconds through `ohms`, in ngspice. */
async function left(volts: number, farad: number, ohms: number, seconds: number): Promise<number> {
  const vectors = await simulate(`* a capacitor runs down
C1 a 0 ${farad} IC=${volts}
R1 a 0 ${ohms}
.options reltol=1e-5
.save v(a)
.tran ${seconds / 500} ${seconds} 0 ${seconds / 500} uic
.end`)
  return vectors.get('v(a)')!.at(-1)!
}

/** Seconds until so many V are left: R·C·ln(V₀/V). */
const secondsTo = (volts: number, from: number, farad: number, ohms: number) =>
  ohms * farad * Math.log(from / volts)

/** V that an igniter stores at speed: twice what the sheets ask of its pulse there; from memory, up to 400 V. */
const stored = 400
const meter = 10e6

const caution = shippedKnowledge().cautions.cautions['charged-capacitor']!
const minutes = { five: 5 }[/Wait (\w+) minutes/.exec(caution.says)![1]!]!
const safe = parseQuantityText(/less than (\d+ V)/.exec(caution.says)![1]!)!.value

describe('the five minutes of the caution', () => {
  const wait = 60 * minutes

  it('begin at the volts that machines store', () => {
    const asked = [...shippedKnowledge().machines.values()].flatMap(({ parts }) =>
      parts.flatMap(({ limits }) => {
        const low = limits?.['running-pulse']?.low
        return low === undefined ? [] : [parseQuantityText(low)!.value]
      }),
    )
    expect(asked.length).toBeGreaterThan(2)
    for (const volts of asked) expect(2 * volts).toBeLessThanOrEqual(stored)
  })

  it('presume a bleed of no more than 100 MΩ beside 1 µF', async () => {
    const most = wait / capacitor / Math.log(stored / safe)
    expect(most / 1e6).toBeGreaterThan(100)
    expect(await left(stored, capacitor, 100e6, wait)).toBeLessThan(safe)
    expect(await left(stored, capacitor, most, wait)).toBeCloseTo(safe, 0)
  })

  it('are not enough without a bleed, which is why it must be proved with the meter', async () => {
    expect(await left(stored, capacitor, 1e9, wait)).toBeGreaterThan(250)
    expect(caution.says).toMatch(/prove it\s+with the meter/)
    // The meter itself runs it down, while one watches.
    expect(secondsTo(safe, stored, capacitor, meter)).toBeLessThan(30)
    expect(await left(stored, capacitor, meter, 30)).toBeLessThan(safe)
  })

  it('are far more than the boxes of the world of the literal person need', () => {
    const kase = shippedCases().find(
      ({ complaint, machine }) =>
        complaint.id === 'no-spark' && machine.parts.some(({ role }) => role === 'igniter'),
    )!
    const needed = Array.from({ length: 20 }, (_, seed) => {
      const world = drawWorld(shippedKnowledge(), kase, seed, '20')
      const box = world.circuit.boxes.find(({ part }) => part === 'igniter')!
      const now = nowAt({ ...asItCame(world), random: seeded(seed) })
      const [a, b] = box.inputs[0]!
      const bleed = ohmsBetween(insides(now, box), node(a, 'own'), node(b, 'own'))
      return secondsTo(safe, stored, capacitor, bleed)
    })
    expect(Math.max(...needed)).toBeLessThan(wait / 10)
  })
})

describe('a capacitor behind a meter of 10 MΩ', () => {
  it('of the peak adaptor keeps as long as the tool takes it to, and the world of the literal person', async () => {
    const { hold } = commonAdaptor
    const ohms = 1 / (1e-6 + 1 / meter)
    for (const each of [1e-6 * ohms, adaptor.farad * adaptor.load]) {
      expect(Math.abs(hold / each - 1)).toBeLessThan(0.02)
    }
    expect(await left(100, 1e-6, ohms, hold)).toBeCloseTo(100 / Math.E, 0)
  })

  // 0.15 to 0.3 µF of points. Common practice, no published source.
  it.each([
    [0.15, 1.5],
    [0.3, 3],
  ])(
    'of %f µF falls to a third in about %f s, so a meter sees a good condenser run down',
    async (microfarad, seconds) => {
      expect(await left(12, microfarad * 1e-6, meter, seconds)).toBeCloseTo(12 / Math.E, 1)
      // One that leaks 1 MΩ is gone before the display has settled.
      expect(secondsTo(0.12, 12, microfarad * 1e-6, 0.9e6)).toBeLessThan(1.5)
    },
  )
})
