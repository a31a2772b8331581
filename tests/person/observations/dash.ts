import { happens, type Random } from '../../../server/practice/world/chance.ts'
import type { Observation } from '../check.ts'
import { answer } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { feedsDash } from '../world/systems/dash.ts'
import type { World } from '../world/world.ts'
import { ask, fair, noticed, rolesOf, vague } from './asking.ts'
import { running } from './pulling.ts'
import { lasting } from './spark.ts'

const whatDied = (world: World, random: Random): string => {
  const roles = rolesOf(world)
  if (roles.includes('dash-fuse')) return noticed(random, fair, 'all-of-it', 'flickers')
  if (roles.some((role) => ['dash-wires', 'dash-ground'].includes(role)))
    return happens(random, 0.5) ? 'flickers' : 'all-of-it'
  return noticed(random, vague, 'all-of-it', world.elsewhere ? 'with-lamps' : 'part-of-it')
}

/** What its glass shows; some that work are fogged as well. */
const dashLook: Observation = ({ site, part }) => {
  const { seed } = site.world
  const isWet = nowAt(site).has(part, 'wet') && lasting(seed, part, 'wet')() < 0.85
  return answer(isWet || lasting(seed, part, 'fog')() < 0.07 ? 'wet-or-cracked' : 'good')
}

export const dashChecks: Readonly<Record<string, Observation>> = {
  'ask-dash-what': ask(whatDied),
  'dash-look': dashLook,
  'lamp-at-dash': (check) => {
    const toMetal = check.card.measurand === undefined && / ground\b/.test(check.card.title)
    return running(check, (now) => answer(feedsDash(now, toMetal) ? 'lights' : 'dark'))
  },
  'dash-on-battery': ({ site, part }) =>
    answer(nowAt(site).has(part, 'dead', 'wet') ? 'dark' : 'wakes'),
}
