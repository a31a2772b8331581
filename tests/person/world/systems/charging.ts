import { node } from '../../../../server/practice/world/node.ts'
import { limitsOn, partsIn } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import { harness } from '../network.ts'
import { type Now, ohmsOf } from '../now.ts'
import { starting } from './starting.ts'
import { magnets } from './volts.ts'

/** What follows of charging and starting from the machine as it stands. */
export interface Charging {
  /** V AC of the three pairs at the rectifier plug, without load, at 3000 rpm. */
  readonly pairs: readonly number[]
  /** V by which the output of the rectifier rises over the battery at rest. */
  readonly leaves: number
  /** V by which the battery rises. */
  readonly arrives: number
  /** V lost along the wire to the battery, and across the fuse. */
  readonly wireDrop: number
  readonly fuseDrop: number
  /** V that the sense wire hides from the rectifier-regulator. */
  readonly senseDrop: number
  /** What the battery holds, as a share of a good one. */
  readonly battery: number
  /** V lost at the plus clamp and at the ground lead while the starter turns. */
  readonly leadDrop: number
  readonly groundDrop: number
  /** rpm of the starter. */
  readonly cranking: number
}

/** A of a charging winding, of a starter; V that a good charge lifts a battery by; rpm of a good starter. From memory. */
const charge = 8
const starter = 70
const lift = 1.4
const brisk = 450
/** Ω that the sense input draws through, V that it holds, V that the winding can add at most. From memory. */
const senseInput = 2000
const holds = 14
const atMost = 4

export function charging(now: Now): Charging {
  const { machine } = now.site.world
  const [rectifier, battery] = ['rectifier', 'battery'].map((role) => partsIn(machine, role)[0]!.id)
  const { standing } = now.site
  const pairs = pairVolts(now, 3000)
  const made = pairs.reduce((sum, volts) => sum + Math.min(1, volts / plenty(now)), 0) / 3
  const joined = !standing.apart.has('rectifier-plug') && !standing.apart.has('output-plug')
  const share = chargeShare(loaded(now, made) * plenty(now), plenty(now))
  const passes = joined ? share * (now.effect(rectifier!).gives ?? 1) : 0
  const way = wayOhms(now)
  const wireDrop = Number.isFinite(way.wire) ? charge * passes * way.wire : 13
  const fuseDrop = Number.isFinite(way.fuse) ? charge * passes * way.fuse : 13
  const sense = senseOhms(now)
  const more = Math.min(atMost, (holds * sense) / senseInput) * Math.min(1, passes)
  const arrives = Number.isFinite(way.all)
    ? Math.max(0, lift * passes + more - charge * passes * way.all)
    : 0
  const held = now.effect(battery!).gives ?? 1
  return {
    pairs,
    leaves: lift * passes + more + (Number.isFinite(way.all) ? 0 : passes * 2),
    arrives,
    wireDrop,
    fuseDrop,
    senseDrop: Number.isFinite(sense) ? (holds * sense) / (sense + senseInput) : holds,
    battery: held,
    ...turned(now, held),
  }
}

/** What the starter makes of the battery: by its own circuit, where the sheet has one. */
function turned(now: Now, held: number): Pick<Charging, 'leadDrop' | 'groundDrop' | 'cranking'> {
  const { machine } = now.site.world
  if (partsIn(machine, 'starter').length > 0) {
    const { leadDrop, groundDrop, rpm } = starting(now)
    return { leadDrop, groundDrop, cranking: rpm }
  }
  const { standing } = now.site
  const lead = now.effect(partsIn(machine, 'battery-lead')[0]!.id).series ?? 0
  const ground = now.effect(partsIn(machine, 'battery-ground')[0]!.id).series ?? 0
  const turns = held / (1 + (starter * (lead + ground)) / 6)
  return {
    leadDrop: Math.min(10, starter * lead * Math.min(1, turns + 0.3)),
    groundDrop: Math.min(10, starter * ground * Math.min(1, turns + 0.3)),
    cranking: standing.batteryOut || standing.batteryGroundOff ? 0 : brisk * Math.min(1, turns),
  }
}

/** V AC of a pair that just reach a battery: its 12.6 V and two diodes, by 1.35 of a three-phase rectifier. */
const reaches = 10.4

/**
 * Share of a full charge that a winding of so many V AC gives, by that of `full`: what limits it is its own
 * inductance, across which stands what the battery leaves, √(E² − E₀²). At half the volts comes more than half.
 */
export function chargeShare(volts: number, full: number): number {
  const across = (of: number) => Math.sqrt(Math.max(0, of ** 2 - reaches ** 2))
  return across(volts) / across(full)
}

/** V AC that charge a battery fully: somewhat more than the least that the sheet asks for. */
function plenty(now: Now): number {
  const winding = partsIn(now.site.world.machine, 'charging')[0]!
  return 1.15 * limitsOn(winding, 'leg-volts')!.low!
}

/** Ω in the way from winding to rectifier take their share of the current. */
function loaded(now: Now, made: number): number {
  const { machine } = now.site.world
  const wires = partsIn(machine, 'charging-wires')[0]!.id
  const { series: onWire = 0, leak = Infinity } = now.effect(wires)
  const winding = partsIn(machine, 'charging')[0]!.id
  const series = onWire + (now.effect(winding).series ?? 0)
  const grounded = Math.min(leak, now.effect(winding).leak ?? Infinity)
  const kept = Number.isFinite(grounded) ? (grounded + 0.2) / (grounded + 3) : 1
  const one = 1 / (1 + (Number.isFinite(series) ? series : 1e9) / 1.5)
  // One wire of three: what it does not carry the two others do, for a part.
  return made * kept * (0.45 + 0.55 * one)
}

/** V AC of each pair of legs at a plug, without load. A leg that is open or apart leaves its two pairs dead. */
export function pairVolts(now: Now, rpm: number, plug = 'rectifier-plug'): readonly number[] {
  const { machine, circuit } = now.site.world
  const part = partsIn(machine, 'charging')[0]!.id
  const { leg, gives = 1 } = now.effect(part)
  const { peak, rpm: at } = now.good(part)
  const open = (peak * magnets(now) * rpm) / at / Math.SQRT2
  const half = plug === circuit.legs[part]![0] ? 'own' : 'harness'
  const net = harness(now)
  return [0, 1, 2].map((i) => {
    const [a, b] = [i, (i + 1) % 3]
    const through = ohmsBetween(net, node([plug, a + 1], half), node([plug, b + 1], half))
    if (!(through < 1e6)) return 0
    // Turns that are shorted brake the flux of the others as well. From memory: by half as much.
    const braked = open * (0.5 + 0.5 * gives)
    // Two legs 120 degrees apart: with one of them at `gives`, |1 + gives·e^(iπ/3)|/√3.
    return a === leg || b === leg
      ? (braked * Math.sqrt(1 + gives + gives * gives)) / Math.sqrt(3)
      : braked
  })
}

/** Ω from the load side of the main fuse to metal: a chafed wire, or a box that is shorted, where it is plugged in. */
export function shortOhms(now: Now, feed: string, rectifier: string): number {
  const { leak = Infinity } = now.effect(feed)
  const isOn = !now.site.standing.apart.has('output-plug') && now.has(rectifier, 'shorted-through')
  return Math.min(leak, isOn ? 0.3 : Infinity)
}

/** Ω of the sense wire; none where the box has no such wire. */
function senseOhms(now: Now): number {
  const [wire] = partsIn(now.site.world.machine, 'sense-wires')
  if (wire === undefined) return 0
  return now.site.standing.apart.has('sense-plug') ? Infinity : (now.effect(wire.id).series ?? 0)
}

function wayOhms(now: Now) {
  const { machine } = now.site.world
  const [feed, fuse, ground, lead, battery] = [
    ...['feed-wires', 'fuse', 'rectifier-ground', 'battery-lead', 'battery-ground'],
  ].map((role) => {
    const part = partsIn(machine, role)[0]!.id
    return 0.004 + (now.effect(part).series ?? 0)
  })
  const holder = now.site.standing.fuseOut ? Infinity : fuse!
  return { wire: feed! + holder, fuse: holder, all: feed! + holder + ground! + lead! + battery! }
}

/** V that a battery holds under load, by its share of a good one: good ones stay well above 10 V. From memory. */
export const heldUnderLoad = (share: number): number => 7.5 + 3.2 * share

/** Ω of a pair of legs, for whoever sends a known current through it. */
export const pairOhms = (now: Now, part: string): number => ohmsOf(now, part)
