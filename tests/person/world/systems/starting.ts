import { partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Now } from '../now.ts'
import { has } from '../site.ts'

/** What follows of the electric start, with the key held at START, from the machine as it stands. */
export interface Starting {
  /** V at the two pins of the relay plug, and whether the relay pulls in. */
  readonly signal: number
  readonly isCalled: boolean
  /** V at the feed pin of the key switch. */
  readonly atKey: number
  /** V at the posts of the battery, and at the stud of the starter to its housing. */
  readonly battery: number
  readonly atStarter: number
  /** V lost on the way of the heavy current. */
  readonly leadDrop: number
  readonly starterLeadDrop: number
  readonly relayDrop: number
  readonly groundDrop: number
  /** rpm of the engine, and whether the starter spins without it. */
  readonly rpm: number
  readonly whirs: boolean
}

/** V of a rested battery; Ω inside a good one, of a starter that turns, of one that is held fast. From memory. */
const rested = 12.6
const inside = 0.03
const turning = 0.15
const stalled = 0.11
/** V at which a relay pulls in, and at which a starter begins to turn a cold engine. From memory. */
const pullsInAt = 6.5
const turnsFrom = 4
/** rpm of a good starter, and V at its stud then. From memory. */
const brisk = 450
const atBrisk = 10.4

const good = 0.001

export function starting(now: Now, standing = now.site.standing): Starting {
  const heavy = heavyOhms(now)
  const path = controlOhms(now)
  const coil = only(now, 'starter-relay')
  const { series: open = 0, contacts = good } = now.effect(coil)
  const winding = now.good(coil).ohms + open
  const isFed = standing.jumper === 'relay'
  const source = hasBattery(now) ? rested : 0
  const control = isFed ? 0.1 : path
  const held = source / (winding + control)
  const lostBeforeKey = Number.isFinite(keyFeed(now))
    ? (Number.isFinite(winding + path) ? source / (winding + path) : 0) * keyFeed(now)
    : source
  const signal = Number.isFinite(control) ? (Number.isFinite(winding) ? held * winding : source) : 0
  const isCalled =
    Number.isFinite(winding) && signal >= pullsInAt && !now.has(coil, 'jammed') && source > 0
  const motor = motorOhms(now)
  const way = heavy.lead + heavy.starterLead + contacts + heavy.ground
  const amps = isCalled ? source / (batteryOhms(now) + way + motor) : 0
  const battery = source - amps * batteryOhms(now)
  const atStarter = isCalled && Number.isFinite(contacts) ? openOr(amps * motor, battery) : 0
  return {
    signal: Math.min(signal, isFed ? source : signal * (battery / (source || 1))),
    isCalled,
    atKey: Math.max(0, battery - amps * (heavy.lead + heavy.ground) - lostBeforeKey),
    battery,
    atStarter,
    leadDrop: amps * heavy.lead,
    starterLeadDrop: amps * heavy.starterLead,
    relayDrop: isCalled && Number.isFinite(contacts) ? openOr(amps * contacts, 0) : source,
    groundDrop: amps * heavy.ground,
    rpm: rpmAt(now, atStarter),
    whirs: now.has(only(now, 'starter'), 'spins-free') && atStarter > turnsFrom,
  }
}

/** Nothing flows through a starter that is open: all of the voltage stands at its stud. */
const openOr = (volts: number, all: number) => (Number.isFinite(volts) ? volts : all)

const only = (now: Now, role: string) => partsIn(now.site.world.machine, role)[0]!.id
const seriesOf = (now: Now, role: string) => now.effect(only(now, role)).series ?? 0

function hasBattery({ site: { standing } }: Now): boolean {
  return !standing.batteryGroundOff && (!standing.batteryOut || standing.standIns.size > 0)
}

function batteryOhms(now: Now): number {
  const battery = only(now, 'battery')
  const held = now.effect(battery).gives ?? 1
  // What is tired loses its inside by the square; freshly charged, as whoever brings one that goes flat has it, by
  // its share. From memory.
  const isCharged = now.site.world.complaint === 'not-charging' || now.site.standing.charged
  return inside / (isCharged ? held : held ** 2)
}

function heavyOhms(now: Now) {
  const isJumped = now.site.standing.standIns.has(only(now, 'battery'))
  return {
    lead: good + seriesOf(now, 'battery-lead'),
    starterLead: good + seriesOf(now, 'starter-lead'),
    // The black clamp of a jump pack goes round the ground lead.
    ground: good + (isJumped ? 0 : seriesOf(now, 'battery-ground')),
  }
}

/** Seized, full of fuel, or held by its drive: a cause that no tree holds. */
const isStuck = ({ site: { world } }: Now) => world.elsewhere && world.complaint === 'does-not-turn'

function motorOhms(now: Now): number {
  const starter = only(now, 'starter')
  if (now.has(starter, 'dead')) return 1e6
  if (isStuck(now)) return stalled
  return now.has(starter, 'drags') ? stalled : turning
}

function rpmAt(now: Now, volts: number): number {
  const starter = only(now, 'starter')
  const idles = now.has(starter, 'dead') || now.has(starter, 'spins-free') || isStuck(now)
  if (idles || volts < turnsFrom) return 0
  const { gives = 1 } = now.effect(starter)
  return (brisk * gives * Math.min(1.05, volts / atBrisk) * (volts - 2)) / (atBrisk - 2)
}

/** Ω of the way to the feed pin of the key; a wire on ground behind its fuse blows it. */
export function keyFeed(now: Now): number {
  const { standing } = now.site
  const wires = only(now, 'key-wires')
  const burnt = isOnGround(now, 'key-wires') || isOnGround(now, 'start-wires')
  if (standing.fuseOut || burnt) return Infinity
  return 0.02 + seriesOf(now, 'fuse') + (now.effect(wires).series ?? 0)
}

export const isOnGround = (now: Now, role: string): boolean =>
  partsIn(now.site.world.machine, role).some(({ id }) => (now.effect(id).leak ?? Infinity) < 60)

/** Ω from the battery over key, start switch and wires to the relay, and from there to ground. */
function controlOhms(now: Now): number {
  const { standing } = now.site
  const plugs = ['key-plug', 'brake-plug', 'relay-plug']
  if (plugs.some((plug) => standing.apart.has(plug))) return Infinity
  const { contacts = 0 } = now.effect(only(now, 'key-switch'))
  const started = partsIn(now.site.world.machine, 'start-switch').reduce(
    (sum, { id }) => sum + (now.effect(id).series ?? 0),
    0,
  )
  const way = seriesOf(now, 'start-wires') + seriesOf(now, 'relay-ground')
  return keyFeed(now) + contacts + started + way
}

/** What keeps the starter from turning a machine with nothing wrong, as it stands. */
export function isKeptFromStarting(now: Now): boolean {
  if (!has(now.site, 'starter')) return false
  const well: Now = {
    ...now,
    site: { ...now.site, world: { ...now.site.world, elsewhere: false } },
    has: () => false,
    effect: () => ({}),
  }
  return starting(well).rpm < 100
}
