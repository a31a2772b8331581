import { describe, expect, it } from 'vitest'
import { seeded } from '../bench/random.ts'
import { asItCame, drawWorld } from '../person/world/draw.ts'
import type { Effect } from '../person/world/effect.ts'
import { nowAt } from '../person/world/now.ts'
import { pairVolts } from '../person/world/systems/charging.ts'
import type { HiddenFault } from '../person/world/world.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { bandRead, charger, likeliest, row } from './by-the-tool.ts'
import { operatingPoint, simulate } from './simulator.ts'

/** What is wrong with the first leg. */
interface Fault {
  /** Ω in series with it, of an open leg more than anything conducts. */
  readonly joint?: number
  /** Ω from the middle of it to the core. */
  readonly toCore?: number
  /** Half the turns of one of its coils are bridged. */
  readonly shorted?: boolean
  /** Ω from its pin to that of the second leg. */
  readonly toNext?: number
}

/** Of the three pairs, in the order of their pins. */
type Three = readonly [number, number, number]
const three = (of: (i: number) => number): Three => [of(0), of(1), of(2)]

/** V between two legs without load, half as much again as the sheet asks for; of good machines it is 1.2 to 2. */
const volts = 1.5 * 38
/** A flywheel of 12 poles at 3000 rpm: f = poles·rpm/120. */
const hz = 300
/** Of a leg: Ω, and H that let it give some 8 A into a battery (common practice, no published source). */
const leg = { ohms: 0.175, henry: 2e-3 }
const open = 1e12

/**
 * One star winding as netlist lines, each coil on a tooth of its own, floating but for what leads to the
 * core. Coils are in two halves, coupled as the turns of one coil are.
 */
function star(name: string, coils: number, { joint, toCore, shorted, toNext }: Fault): string[] {
  const peak = (volts * Math.SQRT2) / Math.sqrt(3) / coils / 2
  const [ohms, henry] = [leg.ohms / coils / 2, leg.henry / coils / 4]
  const half = (id: string, from: string, to: string, degrees: number) => [
    `V${id} ${from} e${id} SIN(0 ${peak} ${hz} 0 0 ${degrees})`,
    `L${id} e${id} r${id} ${henry}`,
    `R${id} r${id} ${to} ${ohms}`,
  ]
  const lines = [0, 1, 2].flatMap((phase) => {
    const at = (k: number) => (k === 0 ? `${name}s` : `${name}p${phase}k${k}`)
    const windings = Array.from({ length: coils }, (_, c) => {
      const id = `${name}p${phase}c${c}`
      return [
        ...half(`${id}a`, at(2 * c), at(2 * c + 1), 120 * phase),
        ...half(`${id}b`, at(2 * c + 1), at(2 * c + 2), 120 * phase),
        `K${id} L${id}a L${id}b 0.95`,
      ]
    })
    const end = phase === 0 ? (joint ?? 1e-3) : 1e-3
    return [...windings.flat(), `Rj${name}${phase} ${at(2 * coils)} ${name}pin${phase} ${end}`]
  })
  return [
    ...lines,
    `Rs${name} ${name}s 0 1e9`,
    ...(shorted ? [`Rt${name} ${name}s ${name}p0k1 1m`] : []),
    ...(toCore === undefined ? [] : [`Rg${name} ${name}p0k${coils} 0 ${toCore}`]),
    ...(toNext === undefined ? [] : [`Rn${name} ${name}pin0 ${name}pin1 ${toNext}`]),
  ]
}

/** V AC of the three pairs, each with a meter of 10 MΩ on it and nothing else. */
async function pairs(fault: Fault, coils = 4): Promise<Three> {
  const copies = [0, 1, 2].flatMap((i) => [
    ...star(`m${i}`, coils, fault),
    `Rm${i} m${i}pin${i} m${i}pin${(i + 1) % 3} 10meg`,
    `Bm${i} shown${i} 0 V = V(m${i}pin${i}) - V(m${i}pin${(i + 1) % 3})`,
  ])
  const vectors = await simulate(`* three pairs of a star winding
${copies.join('\n')}
.options reltol=1e-4 method=gear
.save v(shown0) v(shown1) v(shown2)
.tran 20u 40m 30m 20u
.end`)
  return three((i) => rms(vectors, `v(shown${i})`))
}

function rms(vectors: ReadonlyMap<string, readonly number[]>, name: string): number {
  const [time, values] = [vectors.get('time')!, vectors.get(name)!]
  const area = values.slice(1).reduce((sum, value, i) => {
    const before = values[i]!
    return sum + ((value ** 2 + before ** 2) / 2) * (time[i + 1]! - time[i]!)
  }, 0)
  return Math.sqrt(area / (time.at(-1)! - time[0]!))
}

/** Ω of the three pairs, with 1 mA of a meter. */
async function pairOhms(fault: Fault, coils = 4): Promise<Three> {
  const copies = [0, 1, 2].flatMap((i) => [
    // At DC the EMF of a winding that stands still is none.
    ...star(`m${i}`, coils, fault).filter((line) => !line.startsWith('K')),
    `Im${i} m${i}pin${(i + 1) % 3} m${i}pin${i} 1m`,
  ])
  const still = copies.map((line) => line.replace(/SIN\(.*\)/, '0'))
  const voltage = await operatingPoint(['* ohms of three pairs', ...still].join('\n'))
  return three((i) => {
    const ohms = (voltage(`m${i}pin${i}`) - voltage(`m${i}pin${(i + 1) % 3}`)) / 1e-3
    return ohms > 4e7 ? Number.POSITIVE_INFINITY : ohms
  })
}

const alike = (ohms: readonly number[]) =>
  Math.max(...ohms) <= 1.1 * Math.min(...ohms) ? 'alike' : 'one-off'

/** The world's own volts of the three pairs for an effect, by those of the same machine without it. */
function worldPairs(effect: Effect): Three {
  const world = drawWorld(shippedKnowledge(), charger, 1, '20')
  const at = (faults: readonly HiddenFault[]) => {
    const now = nowAt({ ...asItCame({ ...world, faults, elsewhere: false }), random: seeded(1) })
    return pairVolts(now, 3000, 'charge-plug')
  }
  const good = at([])
  const bad = at([{ part: 'charging', mode: 'leg-open', effect: { leg: 0, ...effect } }])
  return three((i) => (volts * bad[i]!) / good[i]!)
}

const atPlug = 'leg-volts.charging.rectifier-plug'
const ohmsAtPlug = 'leg-resistance.charging.rectifier-plug'

/**
 * A star winding in ngspice, faults put into it one by one. What the tool makes of its volts and ohms is what the
 * table of the part must hold for likeliest, and what the world of the literal person must make.
 */
describe('a three-phase winding', () => {
  it.each([
    ['open', 'leg-open', { joint: open }, { series: open }],
    ['joint of twice a pair', 'bad-joint', { joint: 0.7 }, { series: 0.7 }],
    ['on the core', 'grounded', { toCore: 0.1 }, { leak: 0.1, at: 0.5 }],
  ] as const)('with one leg %s reads as its table says', async (_, mode, fault, effect) => {
    const [read, ohms] = [await pairs(fault), await pairOhms(fault)]
    const kind = 'three-phase-winding'
    expect(bandRead(atPlug, ...read)).toBe(likeliest(kind, mode, 'leg-volts'))
    expect(bandRead(ohmsAtPlug, ...ohms)).toBe(likeliest(kind, mode, 'leg-resistance'))
    expect(alike(ohms)).toBe(likeliest(kind, mode, 'legs-alike'))
    for (const [i, each] of worldPairs(effect).entries()) {
      expect(Math.abs(each - read[i]!)).toBeLessThan(0.01 * volts)
    }
  })

  it('without a fault is in range, and its pairs are alike', async () => {
    const [read, ohms] = [await pairs({}), await pairOhms({})]
    expect(bandRead(atPlug, ...read)).toBe('in range')
    expect(bandRead(ohmsAtPlug, ...ohms)).toBe('in range')
    expect(alike(ohms)).toBe('alike')
    for (const each of read) expect(each).toBeCloseTo(volts, 0)
  })

  it('with shorted turns loses more volts than ohms, and shows them where half a leg is burnt', async () => {
    // Half the turns of one of two coils: a quarter of the leg.
    const [read, ohms] = [await pairs({ shorted: true }, 2), await pairOhms({ shorted: true }, 2)]
    const gives = legShare(read[0]! / volts)
    const bridged = 2 * (1 - ohms[0]! / (2 * leg.ohms))
    expect(bridged).toBeCloseTo(0.25, 1)
    expect(1 - gives).toBeGreaterThan(bridged)
    const kind = 'three-phase-winding'
    expect(bandRead(atPlug, ...read)).toBe(likeliest(kind, 'shorted-turns', 'leg-volts'))
    expect(bandRead(ohmsAtPlug, ...ohms)).toBe(likeliest(kind, 'shorted-turns', 'leg-resistance'))
    expect(alike(ohms)).toBe(likeliest(kind, 'shorted-turns', 'legs-alike'))
    expect(bandRead(atPlug, ...worldPairs({ gives }))).toBe(bandRead(atPlug, ...read))
  })

  // Stators of 12 and of 18 teeth. Common practice: both are usual.
  it.each([4, 6])(
    'hides one burnt coil of %d in a leg, which its table allows for',
    async (coils) => {
      const read = await pairs({ shorted: true }, coils)
      expect(Math.min(...read) / Math.max(...read)).toBeGreaterThan(0.85)
      expect(bandRead(atPlug, ...read)).toBe('in range')
      expect(row('three-phase-winding', 'shorted-turns', 'leg-volts')['in range']).toBeGreaterThan(
        0.2,
      )
      expect(bandRead(atPlug, ...worldPairs({ gives: legShare(read[0]! / volts) }))).toBe(
        'in range',
      )
    },
  )

  it('with one leg on the next reads short in that pair, which only the rows of shorted turns and the core allow', async () => {
    const [read, ohms] = [await pairs({ toNext: 0.02 }), await pairOhms({ toNext: 0.02 })]
    const outcomes = {
      'leg-volts': bandRead(atPlug, ...read),
      'leg-resistance': bandRead(ohmsAtPlug, ...ohms),
      'legs-alike': alike(ohms),
    }
    expect(outcomes).toEqual({
      'leg-volts': 'short',
      'leg-resistance': 'short',
      'legs-alike': 'one-off',
    })
    // The third leg sees the other two in parallel: 1.5 of 1.73.
    expect(read[1]! / volts).toBeCloseTo(Math.sqrt(3) / 2, 1)
    const chance = (mode: string) =>
      Object.entries(outcomes).reduce(
        (p, [property, outcome]) => p * (row('three-phase-winding', mode, property)[outcome] ?? 0),
        1,
      )
    expect(chance('shorted-turns')).toBeGreaterThan(0)
    expect(chance('leg-open')).toBe(0)
  })
})

/** The share g of its EMF that a leg still gives, from its pair by that of good ones: √(1 + g + g²)/√3. */
function legShare(pair: number): number {
  return (-1 + Math.sqrt(12 * pair ** 2 - 3)) / 2
}
