import { node } from '../../../../server/practice/world/node.ts'
import { limitsOn, partNamed, partsIn, servedBy } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import type { Effect } from '../effect.ts'
import { harness } from '../network.ts'
import { type Now, ohmsOf } from '../now.ts'
import { has, seated } from '../site.ts'
import { moduleSpark } from './module.ts'
import { groundOhms, loopOhms, pinsAtBox } from './paths.ts'
import { opening, pointsSpark, stopsBelow as pointsStopBelow } from './points.ts'
import { fedShare } from './supply.ts'
import { arriving, emf, keptAtWork } from './volts.ts'

/** All that follows of the ignition from the machine as it stands, at one speed. */
export interface Ignition {
  /** Ω from the stop wire to metal hold it off. */
  readonly stopped: boolean
  /** What reaches the igniter's capacitor, as a share of what a good machine brings there. */
  readonly supply: number
  readonly outputs: ReadonlyMap<string, Output>
}

export interface Output {
  /** V peak of the timing signal at the igniter. */
  readonly timing: number
  /** V peak of the pulse at the coil plug, nothing drawing from it. */
  readonly pulse: number
  /** Ω of the wires that it comes through. */
  readonly behind: number
  /** The spark that leaves the cap; 1 is that of a good machine at a modest pull. */
  readonly spark: number
}

/** Stop wires are pulled up through some kΩ: below this many Ω to metal there is no spark. From memory. */
const stopsBelow = 1500
/** A run wire is pulled up as weakly: above this many Ω to metal there is no spark. From memory. */
const runsBelow = 2500
/** Capacitor of the igniter, F, and the input of its trigger, Ω. Common practice. */
export const capacitor = 1e-6
const triggerInput = 2000
/** It triggers at this share of the least that the sheet asks of a pickup. From memory. */
const triggersAt = 0.22
/** Ω in the ground of an igniter that halve its pulse, and in the wires of a coil that halve the spark. From memory. */
const groundHalves = 20
const coilHalves = 8

/** What is ample is somewhat more than the least that the sheet asks for, at a modest pull, rpm. */
const ample = 1.2
const leastAt = 400

/** V peak that the sheet asks of a part at a modest pull. */
function least(now: Now, part: string, property: string): number {
  const { low, rpm = leastAt } = limitsOn(partNamed(now.site.world.machine, part), property)!
  return (low! * leastAt) / rpm
}

const leastPeak = (now: Now, part: string) => least(now, part, 'peak-voltage')
const leastPulse = (now: Now) => least(now, seated(now.site, 'igniter'), 'pulse')

export function ignition(now: Now, rpm: number): Ignition {
  if (has(now.site, 'points')) return byPoints(now, rpm)
  const stopped = isStopped(now)
  if (has(now.site, 'module')) return byModules(now, rpm, stopped)
  const supply = isFed(now) ? fedShare(now, rpm) : supplyShare(now, rpm)
  const outputs = now.site.world.machine.outputs.map(
    ({ id }) => [id, outputAt(now, id, rpm, stopped ? 0 : supply)] as const,
  )
  return { stopped, supply, outputs: new Map(outputs) }
}

/** A module for each output, fed by the magnet alone. */
function byModules(now: Now, rpm: number, stopped: boolean): Ignition {
  const outputs = now.site.world.machine.outputs.map(({ id }) => {
    const made = stopped ? 0 : moduleSpark(now, id, rpm)
    const output: Output = {
      timing: 0,
      // What goes astray in the dark needs a spark to begin with.
      pulse: made * 100,
      behind: 0,
      spark: keptOnTheWay(now, id, made, ['module', 'lead', 'cap']),
    }
    return [id, output] as const
  })
  return { stopped, supply: 1, outputs: new Map(outputs) }
}

/** One coil, fired as the points cut off what the magnet drives through them. */
function byPoints(now: Now, rpm: number): Ignition {
  const outputs = now.site.world.machine.outputs.map(({ id }) => {
    const made = pointsSpark(now, id, rpm)
    const spark = keptOnTheWay(now, id, made, ['coil', 'lead', 'cap'])
    return [id, { timing: 0, pulse: made * 100, behind: 0, spark }] as const
  })
  const stopped = opening(now, rpm).leak < pointsStopBelow
  return { stopped, supply: 1, outputs: new Map(outputs) }
}
/** A battery feeds it, and no winding. */
const isFed = ({ site }: Now) => has(site, 'supply-wires')

function isStopped(now: Now): boolean {
  const box = seated(now.site, has(now.site, 'module') ? 'module' : 'igniter')
  if (now.has(box, 'ignores-stop')) return false
  const { run } = now.site.world.circuit.boxes.find(({ part }) => part === box) ?? {}
  if (run !== undefined) {
    const isBridged = now.site.standing.jumper === 'run wire'
    return !isBridged && ohmsBetween(harness(now), node(run, 'own'), 'ground') > runsBelow
  }
  const ohms = ohmsBetween(harness(now), node(['stop-plug', 1], 'own'), 'ground')
  return ohms < stopsBelow
}

/** At a pull the start exciter charges, at speed the run exciter, where there are two. */
function weights(now: Now, rpm: number): readonly (readonly [string, string, number])[] {
  const { machine } = now.site.world
  const exciter = partsIn(machine, 'exciter')[0]!.id
  const wires = partsIn(machine, 'exciter-wires').map(({ id }) => id)
  if (!has(now.site, 'run-exciter')) return [[exciter, wires[0]!, 1]]
  const run = partsIn(machine, 'run-exciter')[0]!.id
  const fast = Math.min(1, Math.max(0, (rpm - 800) / 2200))
  const start = 0.95 - 0.6 * fast
  return [
    [exciter, wires[0]!, start],
    [run, wires[2]!, 1 - start],
  ]
}

function supplyShare(now: Now, rpm: number): number {
  const windings = weights(now, rpm)
  const share = windings.reduce((sum, [part, wires, weight]) => {
    const good = (ample * leastPeak(now, part) * rpm) / leastAt
    const volts = emf(now, part, rpm)
    const { ohms } = now.good(part)
    const kept =
      keptAtWork(now.effect(part), ohms, volts) *
      keptAtWork({ ...now.effect(wires), at: 0 }, ohms, volts)
    return sum + weight * Math.min(1.15, (volts * kept) / good)
  }, 0)
  const loop = windings.reduce((sum, [part]) => sum + loopOhms(now, part), 0)
  const good = windings.reduce((sum, [part]) => sum + ohmsOf(now, part), 0)
  return (share * charged(loop, rpm)) / charged(good, rpm)
}

/** How far a half wave through so many Ω fills the capacitor. */
function charged(ohms: number, rpm: number): number {
  return Number.isFinite(ohms) ? 1 - Math.exp(-5 / rpm / (ohms * capacitor)) : 0
}

function outputAt(now: Now, output: string, rpm: number, supply: number): Output {
  const { site } = now
  const timing = timingAt(now, output, rpm)
  const igniter = seated(site, 'igniter')
  const box = (now.effect(igniter).gives ?? 1) * own(now, 'igniter-output', output)
  const ground = 1 / (1 + groundOhms(now, igniter) / groundHalves)
  const { peak, rpm: at, atSpeed } = now.good(igniter)
  // What a battery feeds gives all it has at any speed.
  const made = isFed(now) ? peak : (peak * rpm) / at
  const whole = Math.min(made, atSpeed || Infinity)
  const enough = supply > 0.15 ? supply : 0
  const pulse = triggered(now, output, timing) * whole * enough * box * ground
  const arrives = coilLoop(now, output)
  const behind = ohmsToPlug(now, output)
  return {
    timing,
    pulse: Number.isFinite(behind) ? pulse * keptByCoilWires(now, output) : 0,
    behind,
    spark: delivered(
      now,
      output,
      Math.min(1.8, pulse / (ample * leastPulse(now))) * keptByCoilWires(now, output),
      arrives,
    ),
  }
}

const own = (now: Now, role: string, output: string) =>
  has(now.site, role) ? (now.effect(seated(now.site, role, output)).gives ?? 1) : 1

/** Below its threshold it does not trigger; just above it, it does so late. */
function triggered(now: Now, output: string, timing: number): number {
  const pickup = partNamed(now.site.world.machine, seated(now.site, 'pickup', output))
  const threshold = triggersAt * limitsOn(pickup, 'peak-voltage')!.low!
  if (timing < threshold) return 0
  return timing < 1.4 * threshold ? 0.55 : 1
}

function timingAt(now: Now, output: string, rpm: number): number {
  const pickup = seated(now.site, 'pickup', output)
  return arriving(now, pickup, seated(now.site, 'pickup-wires', output), rpm, triggerInput)
}

/** Ω between igniter and coil beyond the primary itself; Infinity where they are apart. */
function coilLoop(now: Now, output: string): number {
  const place = partsIn(now.site.world.machine, 'coil', output)[0]!.id
  const coil = seated(now.site, 'coil', output)
  return Math.max(0, loopOhms(now, place) - ohmsOf(now, coil))
}

/** Ω of both wires from the igniter to the coil plug, be the coil on it or not. */
function ohmsToPlug(now: Now, output: string): number {
  const place = partsIn(now.site.world.machine, 'coil', output)[0]!.id
  const [plug, ...pins] = now.site.world.circuit.ends[place]!
  const net = harness(now)
  return pinsAtBox(now, place).reduce(
    (sum, pin, i) => sum + ohmsBetween(net, node(pin, 'own'), node([plug, pins[i]!], 'harness')),
    0,
  )
}

function keptByCoilWires(now: Now, output: string): number {
  const { leak = Infinity } = now.effect(seated(now.site, 'coil-wires', output))
  return Number.isFinite(leak) ? leak / (leak + 5) : 1
}

/** What coil, lead and cap leave of the spark. */
function delivered(now: Now, output: string, made: number, loop: number): number {
  if (!Number.isFinite(loop)) return 0
  return keptOnTheWay(now, output, made / (1 + loop / coilHalves), ['coil', 'lead', 'cap'])
}

/** What is left of a spark at the cap, by the parts that it passes. */
function keptOnTheWay(
  now: Now,
  output: string,
  made: number,
  roles: readonly [string, string, string],
): number {
  const { standing } = now.site
  const circuit = [output, ...pairedWith(now, output)]
  if (circuit.some((each) => standing.leadOff.has(each) || standing.capOff.has(each))) return 0
  const parts = roles.map((role) => now.effect(seated(now.site, role, output)))
  // What a module gives stands in what it has made.
  const [source, ...way] = parts
  const own = roles[0] === 'module' ? 1 : (source?.gives ?? 1)
  const kept = way.reduce(
    (share, effect) => share * letBy(effect),
    made * own * otherHalf(now, output),
  )
  return Math.min(kept, ...parts.map(({ holdsOff = Infinity }) => holdsOff))
}

/** What a lead or a cap lets through. */
function letBy({ series = 0, gives = 1 }: Effect): number {
  return gives * (Number.isFinite(series) ? 1 / (1 + series / 300e3) : 1)
}

/** The outputs that hang on the other tower of the same coil. */
function pairedWith({ site }: Now, output: string): readonly string[] {
  const [coil] = partsIn(site.world.machine, 'coil', output)
  return coil === undefined ? [] : servedBy(coil).filter((each) => each !== output)
}

/** What the other half of a circuit through the head leaves. What goes to metal there has its way as if by the plug. */
function otherHalf(now: Now, output: string): number {
  const others = pairedWith(now, output).flatMap((other) => [
    now.effect(seated(now.site, 'lead', other)),
    now.effect(seated(now.site, 'cap', other)),
  ])
  return others.reduce(
    (share, effect) => (effect.holdsOff === undefined ? share * letBy(effect) : share),
    1,
  )
}
