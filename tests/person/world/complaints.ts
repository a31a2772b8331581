import { partsIn } from '../../../server/practice/world/sheet.ts'
import type { Now } from './now.ts'
import { nowAt } from './now.ts'
import { has, type Site } from './site.ts'
import { add } from './standing.ts'
import { charging, shortOhms } from './systems/charging.ts'
import { dashWakes } from './systems/dash.ts'
import {
  drawsAir,
  firing,
  fuelCause,
  fullSpeed,
  isEarly,
  isFlooded,
  isHeldDown,
  isWorn,
  jumps,
  margin,
  plugAt,
  ropeSpeed,
} from './systems/engine.ts'
import { fuel } from './systems/fuel.ts'
import { ignition } from './systems/ignition.ts'
import { lights } from './systems/lights.ts'
import { isOnGround, starting } from './systems/starting.ts'
import { supplyVolts } from './systems/supply.ts'
import { outputsOf } from './world.ts'

/** Of an owner who pulls, rpm. */
const pull = 450

/** It is as bad on the best pull of whoever is to find it. */
const bestPull = (now: Now) =>
  now.site.world.circuit.noRope ? starting(now).rpm : Math.max(pull, 1.15 * ropeSpeed(now.site))

/** V at which lamps glare and burn out so soon that one complains of it. From memory. */
const glaring = 16

/** Ω to metal behind a fuse of some 15 A that blow it. */
const melts = 0.9

/** V above a battery at rest that boil it. From memory: above 15 V it does so all the time. */
const boils = 2.5

/** What comes and goes is given so many chances to come: nobody tries such a complaint only once. */
const tries = [1, 2, 3]

/**
 * Whether the machine, as it stands, does what its owner complains of. What comes and goes is looked at as it
 * comes at this site: shaken, wetted and hot where `provoked` has made it so.
 */
export function complains(site: Site): boolean {
  const test = complaints[site.world.complaint]
  if (test !== undefined)
    return site.world.elsewhere || tries.some(() => test(nowAt(provoked(site))))
  throw new Error(
    `The literal person has no idea how ${site.world.complaint} shows: add it to tests/person/world/complaints.ts.`,
  )
}

/** The site with all that the owner does when it comes: it is run hot, shaken and wetted, where he says so. */
function provoked(site: Site): Site {
  switch (site.world.complaint) {
    case 'dies-hot':
    case 'hard-start-hot':
      return { ...site, standing: { ...site.standing, hotAt: site.clock } }
    case 'blows-the-fuse':
    case 'bogs-limited':
    case 'cuts-out':
    case 'kicks-back':
    case 'starts-then-dies':
    case 'misfires-at-speed':
    case 'lamps-dim':
      return { ...site, doing: { ...site.doing, shaken: 'all', wetted: 'all' } }
    default:
      return site
  }
}

const sparksAtPlug = (now: Now, output: string, rpm: number) =>
  ignition(now, rpm).outputs.get(output)!.spark * plugAt(now, output).gives

const isOff = (now: Now) =>
  partsIn(now.site.world.machine, 'flywheel-key').some(({ id }) => now.has(id, 'sheared'))

const complaints: Readonly<Record<string, (now: Now) => boolean>> = {
  'no-spark': (now) =>
    isFlooded(now) ||
    outputsOf(now.site.world).every(
      (output) => sparksAtPlug(now, output, bestPull(now)) < jumps.plug.weak,
    ),
  'spark-no-start': (now) =>
    isFlooded(now) || isOff(now) || firing(now, bestPull(now)).length === 0,
  'bogs-limited': (now) =>
    isOff(now) ||
    isHeldDown(now) ||
    fuelCause(now) !== undefined ||
    drawsAirAll(now) ||
    outputsOf(now.site.world).some((output) => margin(now, output, fullSpeed) < 1),
  'kicks-back': (now) => outputsOf(now.site.world).some((output) => isEarly(now, output)),
  'starts-then-dies': (now) => fuelCause(now) !== undefined || drawsAirAll(now) || fails(now),
  'one-cylinder-dead': (now) => {
    const fires = firing(now, 1500).length
    return fires < outputsOf(now.site.world).length
  },
  'hard-start-cold': (now) =>
    isOff(now) ||
    outputsOf(now.site.world).some((output) => margin(now, output, pull) < 1) ||
    outputsOf(now.site.world).some((output) => isWorn(now, output)) ||
    (now.site.world.circuit.electricStart && charging(now).cranking < 300) ||
    fuelCause(now) !== undefined ||
    late(now),
  'misfires-at-speed': (now) =>
    isOff(now) || outputsOf(now.site.world).some((output) => margin(now, output, fullSpeed) < 1),
  'dies-hot': (now) => fails(now),
  'hard-start-hot': (now) => fails(now),
  'cuts-out': (now) => fails(now),
  'no-pump-prime': (now) => fuel(now, bestPull(now)).pump !== 'hums',
  'no-injection-pulse': (now) =>
    [...fuel(now, bestPull(now)).opens.values()].every((opens) => !opens),
  'dash-dead': (now) => !dashWakes(now),
  'dead-lights': (now) => [...lights(now, 3000, true).lamps.values()].every((volts) => volts < 4),
  'lamps-dim': isDim,
  'lamps-too-bright': (now) => lights(now, 3000, true).atLampToMetal > glaring,
  'not-charging': (now) => charging(now).arrives < 0.5 || charging(now).battery < 0.6,
  'blows-the-fuse': (now) => {
    const [fuse, feed, rectifier] = ['fuse', 'feed-wires', 'rectifier'].map(
      (role) => partsIn(now.site.world.machine, role)[0]!.id,
    )
    const hot = now.has(fuse!, 'burnt-holder', 'too-small')
    const start = ['key-wires', 'start-wires'].some((role) => isOnGround(now, role))
    return hot || start || shortOhms(now, feed!, rectifier!) < melts
  },
  overcharges: (now) =>
    charging(now).arrives > boils ||
    partsIn(now.site.world.machine, 'battery').some(({ id }) => now.has(id, 'dead-cell')),
  'does-not-turn': (now) => starting(now).rpm < 200,
  'will-not-stop': (now) =>
    !stopsBySwitch(now) ||
    runSwitches(now).some((part) => !stopsLetGo(now, part)) ||
    (has(now.site, 'tether') && !stopsByTether(now)),
}

/** One of several that draws air is lame by itself. */
const drawsAirAll = (now: Now) => outputsOf(now.site.world).every((output) => drawsAir(now, output))

/** Dim, not dark, standing still; on a bump a lamp may go out. */
function isDim(now: Now): boolean {
  const volts = [...lights(now, 3000, true).lamps.values()]
  const comes = now.site.world.faults.some(({ effect }) => effect.comes !== undefined)
  return volts.some((each) => each < 9.5) && (comes || volts.every((each) => each > 2.5))
}

/** A cylinder or the pump gives up at idle. */
function fails(now: Now): boolean {
  const all = outputsOf(now.site.world).length
  return (
    firing(now, 1500).length < all || (has(now.site, 'pump') && fuel(now, 1500).pump !== 'hums')
  )
}

/** Pump and injection need more of a pull than a brisk one gives. */
function late(now: Now): boolean {
  if (!has(now.site, 'pump')) return false
  const { pump, opens } = fuel(now, pull)
  return pump !== 'hums' || [...opens.values()].some((each) => !each)
}

const stopsBySwitch = (now: Now) => stopped(now, { stopSwitch: 'OFF' })
const runSwitches = ({ site }: Now) => partsIn(site.world.machine, 'run-switch').map(({ id }) => id)
const stopsLetGo = ({ site }: Now, part: string) =>
  ignition(nowAt({ ...site, standing: add('letGo', part)(site.standing) }), 1500).stopped
const stopsByTether = (now: Now) => stopped(now, { tether: 'pulled' })

function stopped(now: Now, position: { stopSwitch: 'OFF' } | { tether: 'pulled' }): boolean {
  const then = nowAt({ ...now.site, standing: { ...now.site.standing, ...position } })
  if (has(now.site, 'supply-wires') && 'stopSwitch' in position)
    return supplyVolts(then, 'OFF', true) < 5
  return ignition(then, 1500).stopped
}
