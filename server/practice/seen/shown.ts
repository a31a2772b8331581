import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { limitsAt } from '../../measure/correct/limits-at.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import { farOff } from '../../measure/decide/bands.ts'
import type { Limits } from '../../measure/reading/reading.ts'
import { byMeter } from '../../measure/reading/settings.ts'
import { anyScale, between, type Random, seeded, seedOf } from '../world/chance.ts'
import { shown, shownByGauge, shownVolts } from '../world/display.ts'
import type { Hidden } from './hidden.ts'
import type { Making } from './making.ts'
import { speedOf } from './speed.ts'
import { isHot, runHot } from './warmth.ts'

/** What the meter shows of a value that lies in this band, at this air and this pull; of several places one is off. */
export function shownFor(
  hidden: Hidden,
  card: CheckCard,
  measurand: Measurand,
  band: string,
  making: Making,
  random: Random,
): string {
  const { places = 1 } = measurand
  const bands = Array.from({ length: places }, (_, i) => (i === 0 ? band : 'in range'))
  return bands.map((each) => shownOnce(hidden, card, measurand, each, making, random)).join(' ')
}

function shownOnce(
  hidden: Hidden,
  card: CheckCard,
  measurand: Measurand,
  band: string,
  { pull }: Making,
  random: Random,
): string {
  const { quantity, material, rpm, property } = measurand
  const warm = measurand.warmedTo ?? (isHot(card) ? runHot : hidden.air)
  const reference = measurand.at ?? assumedForLimits.celsius
  const limits = limitsAt(measurand.limits, quantity, material, warm, reference)
  const own = seeded(seedOf(hidden.seed, card.part ?? card.id, property, band))
  const value = valueIn(band, limits, byMeter(quantity.setting), own)
  const turned = speedOf(pull, random)
  const isPulled = quantity.corrections.includes('speed') && card.engine === 'cranking'
  const atSpeed = isPulled && rpm !== undefined ? (value * turned) / rpm : value
  if (band === quantity.overRange) return 'OL'
  if (!byMeter(quantity.setting)) return shownByGauge(hidden.meter, quantity, value, random)
  const leads = quantity.touches.leads ? hidden.leads : 0
  const { setting } = quantity
  if (setting === 'ac-voltage' || setting === 'dc-voltage') {
    return shownVolts(hidden.meter, setting, atSpeed, random)
  }
  return shown(hidden.meter, setting, atSpeed + leads, random)
}

/** Where values of a band lie as a rule. From memory. */
function valueIn(band: string, { low, high }: Limits, isElectric: boolean, random: Random): number {
  // Where a sheet only gives the least, good ones are not far above it: no battery of 12 V gives 20.
  const [least, most] = [low ?? 0, high ?? (low ?? 1) * 1.35]
  switch (band) {
    case 'short':
      return (least / farOff) * between(random, 0, 0.5)
    case 'low':
      return least * between(random, 0.2, 0.85)
    case 'high':
      // What has shifted or worn is not ten times what it was, as a bad joint may be.
      return most * (isElectric ? anyScale(random, 1.2, 0.8 * farOff) : between(random, 1.25, 2))
    case 'open':
      return most * anyScale(random, 1.5 * farOff, 20 * farOff)
    default:
      // A good one gives more than the least, and loses less than the most.
      return low === undefined
        ? most * between(random, 0.1, 0.6)
        : least + (most - least) * between(random, high === undefined ? 0.2 : 0.15, 0.7)
  }
}
