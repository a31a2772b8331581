import { happens, type Random } from '../../../server/practice/world/chance.ts'
import { partsIn } from '../../../server/practice/world/sheet.ts'
import type { Observation } from '../check.ts'
import type { World } from '../world/world.ts'
import { ask, comesWith, fair, modes, noticed, rolesOf, sure, vague } from './asking.ts'

const flicker = (world: World, random: Random): string => {
  if (modes(world).includes('loose-holder')) return noticed(random, sure, 'one-lamp', 'on-bumps')
  if (comesWith(world, 'shaking')) return noticed(random, fair, 'on-bumps', 'all-dim')
  return noticed(random, sure, 'all-dim', 'on-bumps')
}

/** Some only see that they are dark. From memory. */
const unseen = 0.25

const lampsBright = (world: World, random: Random): string => {
  if (happens(random, unseen)) return 'unseen'
  if (modes(world).includes('open-burns-lamps')) return noticed(random, fair, 'glaring', 'at-once')
  const all = partsIn(world.machine, 'lamp').length
  const each = world.faults.length === all && all > 1
  if (each) return noticed(random, fair, 'slowly', 'at-once')
  return noticed(random, fair, 'at-once', 'slowly')
}

const batteryHistory = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  if (roles.includes('battery'))
    return happens(random, 0.5) ? 'old' : noticed(random, fair, 'standing', 'running')
  if (modes(world).includes('shorted')) return noticed(random, vague, 'standing', 'running')
  if (world.elsewhere) return noticed(random, fair, 'standing', 'running')
  return noticed(random, fair, 'running', 'standing')
}

/** What the owner remembers of lamps and battery. */
/** Nobody overlooks a bang at once; what was added lately is thought of first. */
const whenItBlows = (world: World, random: Random): string => {
  if (world.elsewhere) return noticed(random, vague, 'added', 'at-once')
  if (comesWith(world, 'shaking')) return noticed(random, fair, 'bumps', 'minutes')
  if (rolesOf(world).includes('fuse')) return noticed(random, fair, 'minutes', 'added')
  if (rolesOf(world).includes('rectifier')) return noticed(random, fair, 'at-once', 'running')
  return noticed(random, fair, 'at-once', 'minutes')
}

/** A dead cell starts poorly; too many volts reach the lamps as well. */
const whatBoils = (world: World, random: Random): string => {
  if (modes(world).includes('dead-cell')) return noticed(random, vague, 'one-cell', 'all')
  if (world.elsewhere) return noticed(random, vague, 'smell', 'all')
  return happens(random, 0.4) ? 'lamps' : noticed(random, fair, 'all', 'smell')
}

export const ownerOfLightsChecks: Readonly<Record<string, Observation>> = {
  'ask-what-boils': ask(whatBoils),
  'ask-when-it-blows': ask(whenItBlows),
  'ask-battery': ask(batteryHistory),
  'ask-flicker': ask(flicker),
  'ask-lamps-bright': ask(lampsBright),
  'ask-too-bright': ask((world, random) =>
    world.elsewhere
      ? noticed(random, fair, 'same', 'with-speed')
      : noticed(random, sure, 'with-speed', 'same'),
  ),
  'ask-which-lamp': ask((world, random, { part }) =>
    modes(world).includes('loose-holder') && world.faults.some((fault) => fault.part === part)
      ? noticed(random, sure, 'this-one', 'another')
      : noticed(random, sure, 'another', 'this-one'),
  ),
}
