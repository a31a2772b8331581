import type { Temperature } from '../../server/measure/correct/temperature.ts'
import type { Limits } from '../../server/measure/reading/reading.ts'
import type { meters } from '../measure/doubt/meters.ts'

/** Gives the next number from 0 up to 1. */
export type Draw = () => number

/** A winding on the bench, and how it is touched. */
export interface Part {
  readonly limits: Required<Limits>
  readonly healthy: boolean
  /** Ω of the good wire at 20 °C. */
  readonly wire: number
  /** Share of the turns that are bridged by next to nothing. */
  readonly shorted: number
  /** Ω of a bad joint; of an open winding more than any meter sees. */
  readonly joint: number
  /** What it is, °C, and what the person at the bench believes. */
  readonly celsius: number
  readonly told: Temperature
  /** Ω of the two leads, and whether they were zeroed. */
  readonly leads: number
  readonly zeroed: boolean
  /** Ω of contact at each touch. */
  readonly touches: readonly number[]
  readonly awkward: boolean
  readonly meter: keyof typeof meters
  /** Of the ohmmeter, A. */
  readonly current: number
}

/** Limits of an exciter, injection, pump, pickup, secondary, high-speed exciter and primary winding. */
const sheets = [
  { low: 7.2, high: 10.8 },
  { low: 15.2, high: 22.8 },
  { low: 1.5, high: 2.2 },
  { low: 142, high: 222 },
  { low: 5000, high: 7000 },
  { low: 310, high: 420 },
  { low: 0.24, high: 0.36 },
]
const classes = ['hand', 'pocket', 'shop'] as const
const open = 1e12

/** A generator whose numbers depend on the seed alone (mulberry32). */
export function seeded(seed: number): Draw {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Half of the parts are healthy: anywhere within their limits at 20 °C. Faulty ones lie outside. */
export function drawParts(count: number, random: Draw): Part[] {
  return Array.from({ length: count }, (_, i) => {
    const limits = sheets[i % sheets.length]!
    const healthy = random() < 0.5
    const wire = between(random, limits.low, limits.high)
    const celsius = between(random, -30, 120)
    const halfWidth = random() < 0.5 ? 3 : 10
    const poor = random() < 0.4
    return {
      limits,
      healthy,
      wire,
      ...(healthy ? { shorted: 0, joint: 0 } : fault(limits, wire, random)),
      celsius,
      told: { celsius: celsius + between(random, -halfWidth, halfWidth), halfWidth },
      leads: between(random, 0.1, 0.5),
      zeroed: random() < 0.7,
      touches: Array.from({ length: 1 + Math.floor(3 * random()) }, () => contact(poor, random)),
      awkward: random() < (poor ? 0.5 : 0.2),
      meter: classes[Math.floor(random() * classes.length)]!,
      current: limits.high > 1000 ? 1e-4 : 1e-3,
    }
  })
}

const between = (random: Draw, from: number, to: number) => from + (to - from) * random()

/** Turns shorted until it reads low, a joint that makes it read high, or a break. */
function fault({ low, high }: Required<Limits>, wire: number, random: Draw) {
  const kind = random()
  if (kind < 0.3) return { shorted: 0, joint: open }
  if (kind < 0.65) return { shorted: 1 - (between(random, 0.3, 1) * low) / wire, joint: 0 }
  return { shorted: 0, joint: high * between(random, 1, 3) - wire }
}

/** A clean touch adds a few hundredths of an ohm. A poor one adds ohms, or does not conduct. */
function contact(poor: boolean, random: Draw): number {
  if (!poor) return between(random, 0, 0.04)
  return random() < 0.15 ? open : -3 * Math.log(1 - random())
}

/** One circuit per touch, mP_T being where the current of the meter enters; copper warms as it should. */
export function netlist(parts: readonly Part[]): string {
  const circuits = parts.flatMap((part, p) =>
    part.touches.map((contact, t) => {
      const [id, warm] = [`${p}_${t}`, `temp=${part.celsius} tc1=0.00393`]
      const bridged = part.wire * Math.max(part.shorted, 1e-6)
      return `I${id} 0 m${id} ${part.current}
Rl${id} m${id} a${id} ${part.leads}
Rc${id} a${id} b${id} ${Math.max(contact, 1e-9)}
Rw${id} b${id} c${id} ${part.wire - bridged} ${warm}
Rt${id} c${id} d${id} ${bridged} ${warm}
Rs${id} c${id} d${id} ${part.shorted > 0 ? 1e-6 : open}
Rj${id} d${id} 0 ${Math.max(part.joint, 1e-9)}`
    }),
  )
  return `* windings on the bench\n${circuits.join('\n')}\n.options tnom=20`
}
