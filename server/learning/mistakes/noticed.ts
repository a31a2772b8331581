import { limitsAt } from '../../measure/correct/limits-at.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import type { OhmsCard } from './cards.ts'
import type { Misread, Span } from './misread.ts'

/** A share of the reading that nobody would see. From memory. */
const unseen = 0.01

/** How one notices a mistake, or why one does not. */
export function noticed(card: OhmsCard, good: number, { kind, shows }: Misread): string {
  const isSame = [shows.low, shows.high].every((ohms) => isLike(ohms, good))
  const isGood = fitsLimits(card, shows)
  const isPath = card.measurand.quantity.path === 'must not be'
  switch (kind) {
    case 'plug left on':
      if (isSame && isPath)
        return 'Not here, where nothing else leads to ground. Elsewhere it looks like a winding to ground.'
      if (isSame)
        return 'Not here: what else hangs on these pins is far higher. Elsewhere it is not, so take it apart.'
      if (isPath)
        return 'It looks like a winding to ground, and is only the way round through what is still plugged in.'
      return isGood
        ? 'Not by the limits: see whether the reading moves when the plug comes apart.'
        : 'A good one looks shorted. With the plug apart the reading is right.'
    case 'fingers':
      if (isSame) return 'Not at all, and it does no harm here. It does where kΩ are read, or OL.'
      return `${isGood ? 'It may pass for good. ' : ''}The reading wanders as the grip does, and is right once the probes are held by the plastic.`
    case 'cold':
      return isGood
        ? 'Not by the limits. Say how cold it is, and the reading is corrected before it is judged.'
        : 'A good one looks shorted. Say how cold it is, and the reading is corrected before it is judged.'
    case 'leads':
      if (isSame) return 'Not at all, and it does no harm on so many ohms.'
      return isGood
        ? 'Hold the probes together: what shows then comes off. It is much of so small a reading.'
        : 'A good one looks too high. Hold the probes together: what shows then comes off.'
    case 'other pins':
      return overlaps(card, shows)
        ? 'Not by the reading, for both read alike. Count the pins again from the latch.'
        : 'It fits what else ends in this plug. Count the pins again from the latch.'
  }
}

const isLike = (ohms: number, good: number): boolean =>
  ohms === good || Math.abs(ohms - good) < unseen * good

/** Whether all of it lies within the limits as they are at 20 °C. */
function fitsLimits(card: OhmsCard, { low, high }: Span): boolean {
  const limits = atRoom(card)
  return low >= limits.low && high <= limits.high
}

function overlaps(card: OhmsCard, { low, high }: Span): boolean {
  const limits = atRoom(card)
  return high >= limits.low && low <= limits.high
}

function atRoom({ measurand: { limits, quantity, material, at } }: OhmsCard): Span {
  const { celsius } = assumedForLimits
  const { low = 0, high = Infinity } = limitsAt(limits, quantity, material, celsius, at ?? celsius)
  return { low, high }
}
