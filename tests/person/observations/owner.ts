import { happens, type Random } from '../../../server/practice/world/chance.ts'
import { partNamed } from '../../../server/practice/world/sheet.ts'
import type { Observation } from '../check.ts'
import { asItCame } from '../world/draw.ts'
import { nowAt } from '../world/now.ts'
import { charging } from '../world/systems/charging.ts'
import { firing, idle, isFlooded } from '../world/systems/engine.ts'
import { lights } from '../world/systems/lights.ts'
import { magnets } from '../world/systems/volts.ts'
import { outputsOf, type World } from '../world/world.ts'
import { ask, comesWith, fair, modes, noticed, rolesOf, sure, vague } from './asking.ts'

const isControl = (role: string) =>
  ['stop-switch', 'tether', 'throttle-safety', 'run-switch'].includes(role)
const isWiring = (role: string) => /wires|ground|plug$|pin$/.test(role) && role !== 'plug'

const before = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  const wetted = modes(world).some((mode) =>
    ['corroded', 'wet', 'leaks-when-wet', 'leaking'].includes(mode),
  )
  if (wetted && happens(random, 0.35)) return 'wet'
  if (roles.some(isControl) && happens(random, 0.25)) return 'knock'
  if (roles.some(isWiring) && happens(random, 0.25)) return 'work'
  const chance = random()
  return chance < 0.12 ? 'wet' : chance < 0.18 ? 'knock' : chance < 0.28 ? 'work' : 'nothing'
}

const bumpsOrWet = (world: World, random: Random): string => {
  if (comesWith(world, 'water')) return noticed(random, fair, 'wet', 'both')
  if (comesWith(world, 'shaking')) return noticed(random, fair, 'bumps', 'both')
  return happens(random, 0.4) ? 'bumps' : happens(random, 0.5) ? 'wet' : 'both'
}

/** Fuel parts fade, sparks snap: what he calls it is a matter of ear. */
const howItDies = (world: World, random: Random): string => {
  const isFuel = rolesOf(world).some((role) =>
    ['pump', 'pump-driver', 'injection', 'pump-winding'].includes(role),
  )
  if (isFuel || world.elsewhere) return noticed(random, vague, 'fades', 'snaps')
  return noticed(random, fair, 'snaps', 'fades')
}

/** What he calls it is a matter of ear, and of how often he has heard it. */
const howItStops = (world: World, random: Random): string => {
  if (modes(world).includes('choke-closed')) return noticed(random, fair, 'drowns', 'fades')
  const isFuel = rolesOf(world).some((role) => /^fuel|carburettor|^injection|pump|unit/.test(role))
  if (world.elsewhere)
    return happens(random, 0.6) ? 'fades' : happens(random, 0.6) ? 'snaps' : 'drowns'
  if (isFuel) return noticed(random, fair, 'fades', 'snaps')
  return noticed(random, fair, 'snaps', 'fades')
}

/** Hands move a pickup, a blow shears a key; a slow arm makes a good engine kick. */
const kickSince = (world: World, random: Random): string => {
  if (modes(world).some((mode) => ['reversed', 'shifted'].includes(mode)))
    return noticed(random, fair, 'work', 'nothing')
  if (modes(world).includes('sheared'))
    return happens(random, 0.5) ? 'blow' : happens(random, 0.4) ? 'work' : 'nothing'
  if (world.elsewhere) return happens(random, 0.4) ? 'slow' : 'nothing'
  return happens(random, 0.1) ? 'blow' : 'nothing'
}

const howLong = (world: World, random: Random): string => {
  const kinds = world.faults.map(({ part }) => partNamed(world.machine, part).kind)
  const deep = kinds.some((kind) =>
    ['winding', 'grounded-winding', 'condenser', 'pickup', 'ignition-module'].includes(kind),
  )
  return deep ? noticed(random, fair, 'long', 'short') : noticed(random, vague, 'short', 'long')
}

const lampsGlow = (world: World, random: Random): string => {
  const now = nowAt(asItCame(world))
  const glow = magnets(now) > 0.45 && lights(now, 1500, true).atLampToMetal > 4
  if (!glow) return noticed(random, sure, 'dark', 'dim')
  return noticed(random, fair, magnets(now) < 0.8 ? 'dim' : 'glow', 'dark')
}

const oneOrAll = (world: World, random: Random): string => {
  if (outputsOf(world).length === 1) return 'all'
  const doing = { shaken: 'all', wetted: 'all', certain: true } as const
  const site = asItCame(world)
  const now = nowAt({ ...site, standing: { ...site.standing, hotAt: 0 }, doing })
  const all = firing(now, idle).length === 0 || world.elsewhere
  return all ? noticed(random, fair, 'all', 'one') : noticed(random, fair, 'one', 'all')
}

const whichCylinder = (world: World, random: Random): string => {
  const fires = firing(nowAt(asItCame(world)), idle)
  const outputs = world.machine.outputs.map(({ id }) => id)
  const [dead = outputs[0]!] = outputs.filter((id) => !fires.includes(id))
  const [other = dead] = fires
  return noticed(random, sure, dead, other)
}

const whichControl = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  if (roles.includes('stop-switch')) return noticed(random, sure, 'only-switch', 'neither')
  if (roles.includes('tether')) return noticed(random, sure, 'only-tether', 'neither')
  return noticed(random, sure, 'neither', 'only-switch')
}

/** Nobody tries everything before the machine is brought in. From memory. */
const untried = 0.35

const slowPull = (world: World, random: Random): string => {
  const weak = [
    'shorted-turns',
    'bad-joint',
    'faded',
    'weak',
    'corroded',
    'tired',
    'dead-cell',
    'loose',
  ]
  const helps = modes(world).some((mode) => weak.includes(mode))
  if (happens(random, untried)) return 'untried'
  return helps
    ? noticed(random, vague, 'faster-helps', 'no-help')
    : noticed(random, fair, 'no-help', 'faster-helps')
}

const newPlugs = (world: World, random: Random): string => {
  if (happens(random, untried)) return 'untried'
  return rolesOf(world).includes('plug')
    ? noticed(random, fair, 'helps', 'no-help')
    : noticed(random, fair, 'no-help', 'helps')
}

/** One that does not come home is seen there and then; the others only gave trouble, or none. */
const controls = (world: World, random: Random): string => {
  if (modes(world).includes('out-of-place')) return noticed(random, vague, 'off', 'none')
  if (rolesOf(world).some(isControl)) return noticed(random, vague, 'trouble', 'none')
  return noticed(random, sure, 'none', 'trouble')
}

/** How the one that no longer stops it felt in the hand. */
const stopControl = (world: World, random: Random): string =>
  world.faults.some(({ part }) => isControl(partNamed(world.machine, part).role)) &&
  happens(random, 0.5)
    ? noticed(random, vague, 'odd', 'short')
    : noticed(random, fair, 'home', 'odd')

/** A charge that missed goes off in the hot exhaust. From memory. */
const popping = 0.25

/** What the owner remembers of spark, fuel and controls. */
export const ownerChecks: Readonly<Record<string, Observation>> = {
  'ask-before': ask(before),
  'ask-bumps-or-wet': ask(bumpsOrWet),
  'ask-controls': ask(controls),
  'ask-flooded': ask((world, random) =>
    isFlooded(nowAt(asItCame(world)))
      ? noticed(random, fair, 'much-fuel', 'pulls')
      : noticed(random, fair, noticed(random, fair, 'little', 'pulls'), 'much-fuel'),
  ),
  'ask-heat': ask((world, random) =>
    comesWith(world, 'heat') || modes(world).includes('heat-open')
      ? noticed(random, fair, 'hot', 'not-hot')
      : noticed(random, fair, 'not-hot', 'hot'),
  ),
  'ask-how-it-dies': ask(howItDies),
  'ask-how-it-misses': ask((world, random) =>
    modes(world).includes('loose')
      ? noticed(random, fair, 'fits', 'steady')
      : noticed(random, fair, 'steady', 'fits'),
  ),
  'ask-how-it-stops': ask(howItStops),
  'ask-how-long-cold': ask(howLong),
  'ask-kick-back': ask((world, random) =>
    modes(world).includes('sheared')
      ? noticed(random, vague, 'kicks', happens(random, popping) ? 'bangs' : 'none')
      : noticed(random, sure, happens(random, popping) ? 'bangs' : 'none', 'kicks'),
  ),
  'ask-kick-since': ask(kickSince),
  'ask-lamps-glow': ask(lampsGlow),
  'ask-new-plugs-help': ask(newPlugs),
  'ask-one-or-all': ask(oneOrAll),
  'ask-pump-before': ask((world, random) =>
    modes(world).includes('seized')
      ? noticed(random, fair, 'stood', 'sudden')
      : happens(random, 0.66)
        ? 'sudden'
        : noticed(random, vague, 'stood', 'weaker'),
  ),
  'ask-slow-pull': ask(slowPull),
  'ask-cranking': ask((_, random, { site }) =>
    charging(nowAt(site)).cranking > 330
      ? noticed(random, fair, 'brisk', 'slow')
      : noticed(random, fair, 'slow', 'brisk'),
  ),
  'ask-stop-control': ask(stopControl),
  'ask-stood': ask((world, random) =>
    modes(world).some((mode) => ['glued', 'stale'].includes(mode)) ||
    (rolesOf(world).includes('carburettor') && modes(world).includes('blocked'))
      ? noticed(random, fair, 'long', 'short')
      : noticed(random, fair, 'short', 'long'),
  ),
  'ask-which-control': ask(whichControl),
  'ask-which-cylinder': ask(whichCylinder),
}
