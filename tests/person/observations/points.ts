import { between, happens } from '../../../server/practice/world/chance.ts'
import { shown } from '../../../server/practice/world/display.ts'
import { ground } from '../../../server/practice/world/node.ts'
import { partNamed, partsIn } from '../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../server/practice/world/solve.ts'
import type { Observation } from '../check.ts'
import { answer, type Seen, typed } from '../seen.ts'
import { endAt } from '../world/net/points.ts'
import { network } from '../world/network.ts'
import { nowAt } from '../world/now.ts'
import { type Doing, doing } from '../world/site.ts'
import { ignition } from '../world/systems/ignition.ts'
import { opening, stopsBelow } from '../world/systems/points.ts'
import { look } from './looks.ts'
import { isSeen, threePulls } from './pulling.ts'
import { ohms, placesOn } from './reading.ts'

/** Read where the points are open, all round: the highest. */
const open: Observation = (check) =>
  ohms(check, placesOn(check), { enter: 'all', while: [{ pointsOpen: true }] })

const closed: Observation = (check) => ohms(check, placesOn(check), { enter: 'all', while: [{}] })

/** Lifted off the terminal, from its own end to metal. */
const byItself =
  (what: Doing = {}): Observation =>
  (check) =>
    ohms(check, [endAt(check.part), ground], {
      enter: 'lowest',
      while: [{ ...what, lifted: true }],
    })

const lead: Observation = (check) => byItself({ shaken: check.part })(check)

const warmed: Observation = (check) => {
  const isWinding = partNamed(check.site.world.machine, check.part).kind === 'grounded-winding'
  const top = between(check.site.random, isWinding ? 76 : 66, isWinding ? 84 : 74)
  const steps = [20, 45, top].map((celsius) => ({
    tempered: { part: check.part, celsius },
    lifted: true,
  }))
  return ohms(check, [endAt(check.part), ground], {
    enter: isWinding ? 'highest' : 'lowest',
    while: steps,
    clipped: true,
  })
}

/** A short is over any range, and a leak makes it seem more than it is. */
const capacitance: Observation = ({ site, part }) => {
  const now = nowAt(doing(site, { lifted: true, shaken: part }))
  const { gives = 1, leak = Infinity, breaksDownAt = 0 } = now.effect(part)
  const own = now.good(part).microfarad * gives
  const met = breaksDownAt > 10 ? Infinity : leak
  const read = met < 100 ? Infinity : own * (1 + 2e3 / met)
  return typed(shown(site.world.meter, 'capacitance', read, site.random))
}

/** Where the reading steps up as the flywheel is turned, if it does. */
const timing: Observation = (check): Seen => {
  const { site } = check
  const [from, to] = placesOn(check)
  const at = (pointsOpen: boolean) =>
    ohmsBetween(network(nowAt(doing(site, { pointsOpen }))), from, to)
  const [low, high] = [at(false), at(true)]
  if (!(high > 1.5 * low + 0.2)) return answer('never')
  const now = nowAt(site)
  const { machine } = site.world
  const isOff =
    partsIn(machine, 'flywheel-key').some(({ id }) => now.has(id, 'sheared')) ||
    partsIn(machine, 'points').some(({ id }) => now.has(id, 'opens-early', 'opens-late')) ||
    (partsIn(machine, 'points').some(({ id }) => now.has(id, 'heel-worn')) &&
      happens(site.random, 0.75))
  return answer(isOff ? 'off' : 'at-mark')
}

const sparksThere: Observation = (check) => {
  const seen = threePulls(check, (now, rpm) => {
    const { amps, cut, hasCondenser, leak } = opening(now, rpm)
    if (cut === 0 || amps < 0.5 || leak < stopsBelow) return 'none'
    return hasCondenser ? 'small' : 'bright'
  })
  if (isSeen(seen)) return seen
  return answer(seen.includes('bright') ? 'bright' : seen.includes('small') ? 'small' : 'none')
}

/** Before and after it is clipped there; the eye sees half as much again. */
const beside: Observation = (check) => {
  const pulls = (what: Doing) =>
    threePulls(check, (now, rpm) => ignition(now, rpm).outputs.get(check.output)!.spark, what)
  const [without, withIt] = [pulls({}), pulls({ besideIt: true })]
  if (isSeen(without) || isSeen(withIt)) return isSeen(without) ? without : (withIt as Seen)
  const better = Math.min(...withIt) > 1.5 * Math.min(...without) + 0.1
  return answer(better ? 'better' : 'same')
}

/** What one finds at points and condenser. */
export const pointsChecks: Readonly<Record<string, Observation>> = {
  'points-closed': closed,
  'primary-to-ground': open,
  'to-ground-when-hot': open,
  'winding-to-ground': (check) => ohms(check, placesOn(check), { enter: 'all' }),
  'bare-to-ground': byItself(),
  'points-lead-to-plate': lead,
  'condenser-leak': byItself(),
  'warmed-to-ground': warmed,
  'condenser-warmed': warmed,
  'condenser-capacitance': capacitance,
  'points-timing': timing,
  'points-sparks': sparksThere,
  'condenser-beside': beside,
  'condenser-look': look('tight', { loose: 0.03 }, ['loose']),
  'points-look': look('clean', { oiled: 0.05, 'heel-dry': 0.04, burnt: 0.03 }, [
    'oiled',
    'burnt',
    'heel-dry',
    'arm-bad',
  ]),
  'points-lead-look': look('good', { chafed: 0.05 }, ['chafed', 'broken']),
  'winding-ground-look': look('good', { 'loose-or-rusty': 0.05 }, ['loose-or-rusty']),
}
