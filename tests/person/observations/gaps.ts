import { between } from '../../../server/practice/world/chance.ts'
import { shownByGauge } from '../../../server/practice/world/display.ts'
import { limitsOn, partNamed } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { type Seen, typed } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { seatOf } from '../world/site.ts'
import { looksOf } from './looks.ts'
import { lasting } from './spark.ts'

/** How far off a gap is, in times the limit that it is beyond. */
interface Off {
  readonly of: 'low' | 'high'
  readonly times: readonly [least: number, most: number]
}

const wide: Off = { of: 'high', times: [1.3, 2.5] }
const narrow: Off = { of: 'low', times: [0.2, 0.8] }
const closed: Off = { of: 'low', times: [0, 0.05] }

/** What is off about the gap of this part, if anything. */
type Truth = (now: Now, part: string) => Off | undefined

/** A gap is the same at every look, in the limits or where its failure has put it; a machine of some age may be off. */
const gap =
  (truth: Truth, aged: number): Observation =>
  (check): Seen => {
    const now = nowAt(check.site)
    // One that was exchanged with its twin is read where it sits now.
    const part = seatOf(check.site, check.part)
    const own = lasting(check.site.world.seed, part, check.kind)
    const isAged = own() < aged && !check.site.world.renewed.has(part)
    return read(check, truth(now, part) ?? (isAged ? wide : undefined), own)
  }

function read({ site, part, card }: CheckHere, off: Off | undefined, own: () => number): Seen {
  const { world, random } = site
  const { property, quantity } = card.measurand!
  const { low = 0, high = 2 * low } = limitsOn(partNamed(world.machine, part), property)!
  const value =
    off === undefined
      ? between(own, low + 0.1 * (high - low), high - 0.1 * (high - low))
      : (off.of === 'low' ? low : high) * between(own, ...off.times)
  return typed(shownByGauge(world.meter, quantity, value, random))
}

const ofModule: Truth = (now, part) => (now.has(part, 'too-far') ? wide : undefined)

const ofPoints: Truth = (now, part) => {
  if (now.has(part, 'closed-up')) return closed
  if (now.has(part, 'heel-worn')) return narrow
  return now.has(part, 'stuck-open') || looksOf(now, now.site, part) === 'wide' ? wide : undefined
}

const ofPickup: Truth = (now, part) => (looksOf(now, now.site, part) === 'wrong' ? wide : undefined)

const ofPlug: Truth = (now, part) => {
  if (now.has(part, 'bridged')) return closed
  return now.has(part, 'worn') ? wide : undefined
}

const ofOpening: Truth = (now, part) => {
  if (now.has(part, 'heel-worn', 'opens-late')) return narrow
  return now.has(part, 'opens-early') ? { of: 'high', times: [1.2, 1.8] } : undefined
}

/** What blades, dial gauge and degree wheel show. */
export const gapsChecks: Readonly<Record<string, Observation>> = {
  'module-air-gap': gap(ofModule, 0.03),
  'points-gap': gap(ofPoints, 0.02),
  'pickup-air-gap': gap(ofPickup, 0.02),
  'plug-gap': gap(ofPlug, 0.06),
  'points-opening': gap(ofOpening, 0.01),
  'points-opening-angle': gap(ofOpening, 0.01),
}
