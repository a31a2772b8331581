import { happens, type Random } from '../../../server/practice/world/chance.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { doing } from '../world/site.ts'
import { firing, fuelCause, fullSpeed, isHeldDown, margin } from '../world/systems/engine.ts'
import type { World } from '../world/world.ts'
import { ask, comesWith, fair, modes, noticed, rolesOf, vague } from './asking.ts'
import { running } from './pulling.ts'
import { lasting } from './spark.ts'

/** A limiter is plain to hear; what misses and what starves is a matter of ear. */
const howItBogs = (world: World, random: Random): string => {
  if (world.elsewhere) return happens(random, 0.6) ? 'fades' : 'held'
  const all = modes(world)
  if (all.includes('stays-limited')) return noticed(random, fair, 'held', 'fades')
  if (all.includes('choke-closed')) return noticed(random, fair, 'smokes', 'fades')
  if (rolesOf(world).some((role) => /^fuel|carburettor/.test(role)))
    return noticed(random, fair, 'fades', 'cuts')
  if (comesWith(world, 'shaking')) return noticed(random, vague, 'held', 'cuts')
  return noticed(random, vague, 'cuts', 'fades')
}

/** What half a choke does, by what is wrong. From memory. */
const chokeAtThrottle: Observation = (check) =>
  running(check, (now) => {
    const { seed } = check.site.world
    const chance = lasting(seed, 'engine', 'half a choke')()
    const all = modes(check.site.world)
    if (all.includes('choke-closed')) return answer(chance < 0.85 ? 'worse' : 'same')
    if (fuelCause(now) !== undefined)
      return answer(chance < 0.75 ? 'better' : chance < 0.93 ? 'same' : 'worse')
    // A crank seal, which no tree holds, draws air as an inlet does, and a blocked filter drowns it.
    const isLean = all.includes('breathes-badly')
    if (isLean) return answer(chance < 0.6 ? 'better' : chance < 0.9 ? 'same' : 'worse')
    if (check.site.world.elsewhere)
      return answer(chance < 0.2 ? 'better' : chance < 0.6 ? 'same' : 'worse')
    return answer(chance < 0.07 ? 'better' : chance < 0.6 ? 'same' : 'worse')
  })

/** At full throttle more fuel helps what is lean, and leaves a spark that fails as it is. From memory. */
const chokeAtSpeed: Observation = (check) =>
  running(check, () => {
    const chance = lasting(check.site.world.seed, 'engine', 'half a choke')()
    if (check.site.world.elsewhere)
      return answer(chance < 0.42 ? 'better' : chance < 0.75 ? 'same' : 'worse')
    return answer(chance < 0.07 ? 'better' : chance < 0.8 ? 'same' : 'worse')
  })

/** Blocked now and then where something else is wrong, and this often where it is no part of the tree. From memory. */
const breathing =
  (elsewhere: number): Observation =>
  ({ site: { world } }) =>
    answer(
      lasting(world.seed, 'engine', 'air')() < (world.elsewhere ? elsewhere : 0.06)
        ? 'blocked'
        : 'free',
    )

/** Left out by a box or a switch, or by a pickup that jumps; a weak one is there each time. */
const flashAtLimit: Observation = (check) =>
  running(check, () => {
    const seen = [1, 2, 3].some(() => leftOut(check))
    return answer(seen || happens(check.site.random, 0.08) ? 'gaps' : 'steady')
  })

function leftOut({ site, output }: CheckHere): boolean {
  const now = nowAt(doing(site, { shaken: 'all' }))
  return (
    isHeldDown(now) || (!firing(now, 1500).includes(output) && margin(now, output, fullSpeed) < 1)
  )
}

export const bogsChecks: Readonly<Record<string, Observation>> = {
  'ask-how-it-bogs': ask(howItBogs),
  'air-and-exhaust': breathing(0.5),
  'breathing-look': breathing(0.33),
  'choke-at-speed': chokeAtSpeed,
  'choke-at-throttle': chokeAtThrottle,
  'flash-at-limit': flashAtLimit,
}
