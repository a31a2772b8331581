import { happens, type Random } from '../../../server/practice/world/chance.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { isDrowned, ropeIsOff, starvesHot } from '../world/systems/engine.ts'
import type { World } from '../world/world.ts'
import { ask, fair, modes, noticed, rolesOf, vague } from './asking.ts'
import { lasting } from './spark.ts'

const drowns = ['wet', 'leaks-over', 'choke-closed']

/** Each has tried all of it, and remembers what helped last. */
const whatHelps = (world: World, random: Random): string => {
  const all = modes(world)
  if (world.elsewhere) return happens(random, 0.5) ? 'waiting' : 'pulling'
  if (all.some((mode) => drowns.includes(mode))) return noticed(random, fair, 'throttle', 'waiting')
  if (all.includes('boils')) return noticed(random, vague, 'fuel', 'waiting')
  if (all.includes('low-compression')) return noticed(random, vague, 'pulling', 'waiting')
  return noticed(random, fair, 'waiting', 'pulling')
}

/** Wet where it drowns, dry where nothing but vapour arrives. */
const plugWhenHot: Observation = ({ site }) => {
  const now = nowAt(site)
  if (ropeIsOff(now)) return barred('the rope starter is off')
  if (isDrowned(now)) return answer(happens(site.random, 0.86) ? 'soaked' : 'damp')
  if (starvesHot(now)) return answer(happens(site.random, 0.8) ? 'dry' : 'damp')
  const chance = lasting(site.world.seed, 'plugs', 'hot')()
  return answer(chance < 0.7 ? 'damp' : chance < 0.88 ? 'soaked' : 'dry')
}

/** A trick that helps against one thing, as a rule; else it starts now and then because time has passed. */
const helps =
  (against: (check: CheckHere) => boolean, chance: number): Observation =>
  (check) => {
    const { site } = check
    if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
    return answer(happens(site.random, against(check) ? chance : 0.08) ? 'starts' : 'no')
  }

const hasMode =
  (...some: readonly string[]) =>
  ({ site: { world } }: CheckHere) =>
    modes(world).some((mode) => some.includes(mode))

export const hotStartChecks: Readonly<Record<string, Observation>> = {
  'ask-what-helps-hot': ask(whatHelps),
  'ask-choke-hot': ask((world, random) =>
    rolesOf(world).includes('flooding')
      ? noticed(random, fair, 'used', 'not-used')
      : noticed(random, fair, 'not-used', 'used'),
  ),
  'plug-when-hot': plugWhenHot,
  'wide-open-hot': helps(hasMode(...drowns), 0.8),
  'wet-rag-hot': helps(hasMode('boils'), 0.85),
  'cap-opened-hot': ({ site, part }) => {
    const isShut = nowAt(site).has(part, 'blocked') && happens(site.random, 0.75)
    return answer(isShut || happens(site.random, 0.05) ? 'runs' : 'no')
  },
  'no-choke-hot': helps(hasMode('wet'), 0.9),
  'throat-when-hot': ({ site, part }) => {
    const leaks = nowAt(site).has(part, 'leaks-over') && happens(site.random, 0.8)
    return answer(leaks || lasting(site.world.seed, part, 'throat')() < 0.06 ? 'wet' : 'dry')
  },
}
