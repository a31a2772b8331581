import { spread } from '../../../server/practice/world/chance.ts'
import { shown } from '../../../server/practice/world/display.ts'
import { partNamed, partsIn } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred, type Seen, typed } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { type Doing, doing } from '../world/site.ts'
import { charging, heldUnderLoad, shortOhms } from '../world/systems/charging.ts'
import { isOnGround, starting } from '../world/systems/starting.ts'
import { running } from './pulling.ts'
import { lasting } from './spark.ts'

/** No two of the same kind are quite alike, nor are two readings of one. */
const near = (check: CheckHere, value: number) => value * spread(check.site.random, 1, 0.01)

/** V of a rested battery. Common practice. */
const rested = 12.6

function volts(check: CheckHere, value: number): Seen {
  const { world, random } = check.site
  return typed(shown(world.meter, 'dc-voltage', near(check, value), random))
}

/** At fast idle: what the battery has at rest, and what the charge lifts it by. */
const lifted = (by: (now: Now) => number): Observation => {
  return (check) => running(check, (now) => volts(check, rested + by(now)))
}

/** The starter needs its battery, and its ground lead. */
function cranked(check: CheckHere, seeing: (now: Now) => Seen) {
  const now = nowAt(check.site)
  const { batteryGroundOff, batteryOut, standIns } = check.site.standing
  if (batteryGroundOff) return barred('the ground lead is off the battery')
  if (batteryOut && standIns.size === 0) return barred('the battery is out')
  return seeing(now)
}

const drop =
  (lost: (now: Now) => number): Observation =>
  (check) =>
    cranked(check, (now) => volts(check, lost(now) + 0.03))

const cranking: Observation = (check) =>
  cranked(check, (now) => answer(charging(now).cranking > 330 ? 'brisk' : 'slow'))

const wireDrop: Observation = (check) =>
  running(check, (now) => {
    const { role } = partNamed(check.site.world.machine, check.part)
    const { wireDrop: along, fuseDrop, senseDrop } = charging(now)
    const lost = { fuse: fuseDrop, 'sense-wires': senseDrop }[role] ?? along
    return volts(check, lost)
  })

const underLoad: Observation = (check) =>
  volts(check, heldUnderLoad(charging(nowAt(check.site)).battery))

const known: Observation = (check) =>
  running(check, (now) => answer(charging(now).arrives >= 0.5 ? 'rises' : 'stays'))

/** A lamp of 21 W in the place of the fuse: some ohms behind it leave it bright, some tens dark. From memory. */
const lampBurns = ({ site }: CheckHere, what: Doing = {}): boolean => {
  const [feed, rectifier] = ['feed-wires', 'rectifier'].map(
    (role) => partsIn(site.world.machine, role)[0]!.id,
  )
  const now = nowAt(doing(site, what))
  // With the key at OFF nothing flows beyond it.
  return isOnGround(now, 'key-wires') || shortOhms(now, feed!, rectifier!) < 4
}

const lampForFuse: Observation = (check) => {
  if (check.site.standing.batteryGroundOff) return barred('the ground lead is off the battery')
  if (lampBurns(check)) return answer('bright')
  const flashes = [1, 2, 3].some(() => lampBurns(check, { shaken: 'all' }))
  return answer(flashes ? 'flickers' : 'dark')
}

const lampRectifierOff: Observation = (check) => {
  if (check.site.standing.batteryGroundOff) return barred('the ground lead is off the battery')
  return answer(lampBurns(check) ? 'bright' : 'dark')
}

/** A short splashes, an overload parts, a hot holder melts the end. What was added draws too much more often than it is shorted. */
const fuseWitness: Observation = ({ site, part }) => {
  const { seed, faults, elsewhere } = site.world
  const chance = lasting(seed, part, 'blown')()
  const mode = faults.find((fault) => fault.part === part)?.mode
  if (mode === 'burnt-holder') return answer(chance < 0.86 ? 'at-end' : 'parted')
  if (mode === 'too-small') return answer(chance < 0.84 ? 'parted' : 'splashed')
  return answer(chance < (elsewhere ? 0.35 : 0.72) ? 'splashed' : 'parted')
}

/** Some have a bigger one in already: the commonest cure of those who have no other. From memory. */
const fuseNumber: Observation = ({ site, part }) => {
  if (nowAt(site).has(part, 'too-small')) return answer('other')
  return answer(lasting(site.world.seed, part, 'amps')() < 0.08 ? 'bigger' : 'right')
}

export const chargingChecks: Readonly<Record<string, Observation>> = {
  'lamp-for-fuse': lampForFuse,
  'lamp-rectifier-off': lampRectifierOff,
  'fuse-witness': fuseWitness,
  'fuse-number': fuseNumber,
  'over-volts': lifted((now) => charging(now).arrives),
  'known-good-rectifier-high': (check) =>
    running(check, (now) => answer(charging(now).arrives > 2.2 ? 'stays' : 'falls')),
  'charge-volts': lifted((now) => charging(now).arrives),
  'rectifier-out-volts': lifted((now) => charging(now).leaves),
  'known-good-rectifier': known,
  'charge-wire-drop': wireDrop,
  'battery-load': underLoad,
  'battery-terminal-drop': (check) =>
    partNamed(check.site.world.machine, check.part).role === 'starter-lead'
      ? drop((now) => starting(now).starterLeadDrop)(check)
      : drop((now) => charging(now).leadDrop)(check),
  'battery-ground-drop': drop((now) => charging(now).groundDrop),
  'cranking-speed': cranking,
  'jump-start': cranking,
  'standing-drain': ({ site, part }) =>
    answer(Number.isFinite(nowAt(site).effect(part).leak ?? Infinity) ? 'drains' : 'none'),
}
