import type { CheckHere, Observation } from '../check.ts'
import { answer, cannotTell, type Seen } from '../seen.ts'
import { happens, type Random } from '../world/chance.ts'
import { asItCame } from '../world/draw.ts'
import { nowAt } from '../world/now.ts'
import { partNamed, partsIn } from '../world/sheet.ts'
import { firing, idle, isFlooded } from '../world/systems/engine.ts'
import { lights } from '../world/systems/lights.ts'
import { magnets } from '../world/systems/volts.ts'
import { outputsOf, type World } from '../world/world.ts'
import { lasting } from './spark.ts'

/**
 * An owner answers from memory: asked again he says the same. One in ten has no idea; of the others some say what they
 * would like to have seen.
 */
const ask =
  (recall: (world: World, random: Random, check: CheckHere) => string): Observation =>
  (check): Seen => {
    const { world } = check.site
    const random = lasting(world.seed, check.card.id, 'owner')
    return happens(random, 0.1)
      ? cannotTell('the owner does not know')
      : answer(recall(world, random, check))
  }

/** How well one remembers: what one had in hand, what one saw, what one has to call something. From memory. */
const [sure, fair, vague] = [0.9, 0.78, 0.62]

/** What he noticed, or what he says where he did not look. */
const noticed = (random: Random, chance: number, truth: string, other: string) =>
  happens(random, chance) ? truth : other

const modes = ({ faults }: World) => faults.map(({ mode }) => mode)
const rolesOf = ({ faults, machine }: World) =>
  faults.map(({ part }) => partNamed(machine, part).role)
const comesWith = (world: World, what: string) =>
  world.faults.some(({ effect }) => effect.comes?.with === what)

const isControl = (role: string) => ['stop-switch', 'tether', 'throttle-safety'].includes(role)
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

const flicker = (world: World, random: Random): string => {
  if (modes(world).includes('loose-holder')) return noticed(random, sure, 'one-lamp', 'on-bumps')
  if (comesWith(world, 'shaking')) return noticed(random, fair, 'on-bumps', 'all-dim')
  return noticed(random, sure, 'all-dim', 'on-bumps')
}

/** Fuel parts fade, sparks snap: what he calls it is a matter of ear. */
const howItDies = (world: World, random: Random): string => {
  const isFuel = rolesOf(world).some((role) =>
    ['pump', 'pump-driver', 'injection', 'pump-winding'].includes(role),
  )
  if (isFuel || world.elsewhere) return noticed(random, vague, 'fades', 'snaps')
  return noticed(random, fair, 'snaps', 'fades')
}

const howLong = (world: World, random: Random): string => {
  const kinds = world.faults.map(({ part }) => partNamed(world.machine, part).kind)
  const deep = kinds.some((kind) => kind === 'winding' || kind === 'pickup')
  return deep ? noticed(random, fair, 'long', 'short') : noticed(random, vague, 'short', 'long')
}

const lampsGlow = (world: World, random: Random): string => {
  const now = nowAt(asItCame(world))
  const glow = magnets(now) > 0.45 && lights(now, 1500, true).atLampToMetal > 4
  return glow ? noticed(random, fair, 'glow', 'dark') : noticed(random, sure, 'dark', 'glow')
}

const lampsBright = (world: World, random: Random): string => {
  if (modes(world).includes('open-burns-lamps')) return noticed(random, fair, 'glaring', 'at-once')
  const all = partsIn(world.machine, 'lamp').length
  const each = world.faults.length === all && all > 1
  if (each) return noticed(random, fair, 'slowly', 'at-once')
  return noticed(random, fair, 'at-once', 'slowly')
}

const oneOrAll = (world: World, random: Random): string => {
  if (outputsOf(world).length === 1) return 'all'
  const doing = { shaken: 'all', wetted: 'all', certain: true } as const
  const site = asItCame(world)
  const now = nowAt({ ...site, standing: { ...site.standing, hotAt: 0 }, doing })
  const all = firing(now, idle).length === 0 || world.elsewhere
  return all ? noticed(random, fair, 'all', 'one') : noticed(random, fair, 'one', 'all')
}

const whichCylinder = (world: World, random: Random, { output }: CheckHere): string => {
  const fires = firing(nowAt(asItCame(world)), idle).includes(output)
  return fires ? noticed(random, sure, 'fires', 'dead') : noticed(random, sure, 'dead', 'fires')
}

const whichControl = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  if (roles.includes('stop-switch')) return noticed(random, sure, 'only-switch', 'neither')
  if (roles.includes('tether')) return noticed(random, sure, 'only-tether', 'neither')
  return noticed(random, sure, 'neither', 'only-switch')
}

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
  return helps
    ? noticed(random, vague, 'faster-helps', 'no-help')
    : noticed(random, fair, 'no-help', 'faster-helps')
}

const batteryHistory = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  if (roles.includes('battery'))
    return happens(random, 0.5) ? 'old' : noticed(random, fair, 'standing', 'running')
  if (modes(world).includes('shorted')) return noticed(random, vague, 'standing', 'running')
  if (world.elsewhere) return noticed(random, fair, 'standing', 'running')
  return noticed(random, fair, 'running', 'standing')
}

export const ownerChecks: Readonly<Record<string, Observation>> = {
  'ask-battery': ask(batteryHistory),
  'ask-before': ask(before),
  'ask-bumps-or-wet': ask(bumpsOrWet),
  'ask-controls': ask((world, random) =>
    rolesOf(world).some(isControl)
      ? noticed(random, vague, 'trouble', 'none')
      : noticed(random, sure, 'none', 'trouble'),
  ),
  'ask-flicker': ask(flicker),
  'ask-flooded': ask((world, random) =>
    isFlooded(nowAt(asItCame(world)))
      ? noticed(random, fair, 'much-fuel', 'little')
      : noticed(random, fair, 'little', 'much-fuel'),
  ),
  'ask-heat': ask((world, random) =>
    comesWith(world, 'heat') || modes(world).includes('heat-open')
      ? noticed(random, fair, 'hot', 'not-hot')
      : noticed(random, fair, 'not-hot', 'hot'),
  ),
  'ask-how-it-dies': ask(howItDies),
  'ask-how-long-cold': ask(howLong),
  'ask-kick-back': ask((world, random) =>
    modes(world).includes('sheared')
      ? noticed(random, vague, 'kicks', 'none')
      : noticed(random, sure, 'none', 'kicks'),
  ),
  'ask-lamps-bright': ask(lampsBright),
  'ask-lamps-glow': ask(lampsGlow),
  'ask-new-plugs-help': ask((world, random) =>
    rolesOf(world).includes('plug')
      ? noticed(random, fair, 'helps', 'no-help')
      : noticed(random, fair, 'no-help', 'helps'),
  ),
  'ask-one-or-all': ask(oneOrAll),
  'ask-pump-before': ask((world, random) =>
    modes(world).includes('seized')
      ? noticed(random, fair, 'stood', 'sudden')
      : happens(random, 0.66)
        ? 'sudden'
        : noticed(random, vague, 'stood', 'weaker'),
  ),
  'ask-slow-pull': ask(slowPull),
  'ask-stood': ask((world, random) =>
    modes(world).includes('glued')
      ? noticed(random, fair, 'long', 'short')
      : noticed(random, fair, 'short', 'long'),
  ),
  'ask-too-bright': ask((world, random) =>
    world.elsewhere
      ? noticed(random, fair, 'same', 'with-speed')
      : noticed(random, sure, 'with-speed', 'same'),
  ),
  'ask-which-control': ask(whichControl),
  'ask-which-cylinder': ask(whichCylinder),
  'ask-which-lamp': ask((world, random, { part }) =>
    modes(world).includes('loose-holder') && world.faults.some((fault) => fault.part === part)
      ? noticed(random, sure, 'this-one', 'another')
      : noticed(random, sure, 'another', 'this-one'),
  ),
}
