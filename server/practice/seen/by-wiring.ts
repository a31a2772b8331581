import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { apart } from '../../diagnosis/model/chances.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Random } from '../world/chance.ts'
import { contactOhms } from '../world/contact.ts'
import { shown } from '../world/display.ts'
import { doesOf, type TrueMachine } from '../world/machine.ts'
import { ohmsAt, placesFor } from '../world/net/meet.ts'
import type { Hidden } from './hidden.ts'
import type { Making } from './making.ts'
import { momentOf, propertyOf } from './moment.ts'
import { isPeak, peakShown } from './wired/peaks.ts'
import { voltsAt } from './wired/volts.ts'

/** The reading of a check as the wiring of the machine gives it; null where it does not tell. */
export function byWiring(
  hidden: Hidden,
  card: CheckCard,
  making: Making,
  random: Random,
): string | null {
  const { truth } = hidden
  const reads = truth && propertyOf(truth, card)?.reads
  if (!truth || !reads || !isKnown(hidden, truth, card)) return null
  const now = momentOf(truth, card, making.stands, hidden.air)
  if (reads === 'volts') return voltsAt(hidden, now, card, random)
  if (isPeak(reads)) return peakShown(hidden, now, card, reads, making.pull, random)
  const places = placesFor(card, truth.circuit, reads)
  if (places === null || places.length === 0) return null
  const contact = contactOhms(random, card.spot?.awkward ?? false)
  const { meter, leads } = hidden
  const ohms = ohmsAt(now, places)
  // Of several wires the highest is entered, of legs every one.
  const entered = card.measurand?.places === ohms.length ? ohms : [Math.max(...ohms)]
  const texts = entered.map((each) => shown(meter, 'resistance', each + contact + leads, random))
  return texts.join(' ')
}

/**
 * Whether the wiring knows all that is wrong and shows in this check: a fault that says nothing of what it does
 * physically follows its rows.
 */
export function isKnown(
  { kase, cutSet, faults, knowledge }: Hidden,
  { machine }: TrueMachine,
  card: CheckCard,
): boolean {
  if (faults.every((fault) => doesOf(knowledge, machine, fault) !== undefined)) return true
  return !shows(kase.model, card.id, cutSet)
}

/** Whether a cut set shows in a check: its row is another than that of most others. */
export function shows(model: Hidden['kase']['model'], check: string, cutSet: number): boolean {
  const { chances } = checkNamed(model, check)
  const outside = model.cutSets.findIndex(({ faults }) => faults.length === 0)
  return apart(numbered(chances, cutSet), numbered(chances, Math.max(outside, 0))) > 0
}
