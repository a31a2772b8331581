import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { apart } from '../../diagnosis/model/chances.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Random } from '../world/chance.ts'
import { contactOhms } from '../world/contact.ts'
import { shown, shownVolts } from '../world/display.ts'
import { doesOf, type TrueMachine } from '../world/machine.ts'
import { ohmsAt, type Places, peakAt, placesFor } from '../world/net/meet.ts'
import type { Moment } from '../world/net/moment.ts'
import type { Hidden } from './hidden.ts'
import type { Making } from './making.ts'
import { momentOf, propertyOf } from './moment.ts'
import { speedOf } from './speed.ts'
import { voltsAt } from './volts.ts'

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
  const places = placesFor(card, truth.circuit, reads)
  const [first] = places ?? []
  if (places === null || first === undefined) return null
  const contact = contactOhms(random, card.spot?.awkward ?? false)
  const { meter, leads } = hidden
  if (reads !== 'peak') {
    const ohms = ohmsAt(now, places)
    // Of several wires the highest is entered, of legs every one.
    const entered = card.measurand?.places === ohms.length ? ohms : [Math.max(...ohms)]
    const texts = entered.map((each) => shown(meter, 'resistance', each + contact + leads, random))
    return texts.join(' ')
  }
  return shownVolts(meter, 'dc-voltage', peak(now, card, first, making, contact, random), random)
}

function peak(
  now: Moment,
  { part = '' }: CheckCard,
  places: Places,
  { pull }: Making,
  contact: number,
  random: Random,
): number {
  // Three pulls, the best of them.
  const speeds = [0, 1, 2].map(() => speedOf(pull, random))
  return peakAt(now, part, places, Math.max(...speeds), contact)
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
