import type { CheckCard } from '../../../knowledge/case.ts'
import { type Random, spread } from '../../world/chance.ts'
import { shownVolts } from '../../world/display.ts'
import { ohmsAt, placesFor } from '../../world/net/meet.ts'
import type { Moment } from '../../world/net/moment.ts'
import { placesAtWork } from '../../world/work/places.ts'
import { atWork } from '../../world/work/volts.ts'
import { legVolts } from '../../world/work/windings.ts'
import type { Hidden } from '../hidden.ts'

/** rpm that a check which names none is made at. Common practice. */
const fastIdle = 3000

/** What a meter on volts shows on the machine at work; null where nobody knows what flows there. */
export function voltsAt(
  { meter }: Hidden,
  now: Moment,
  card: CheckCard,
  random: Random,
): string | null {
  const { measurand, part = '', engine } = card
  const setting = measurand?.quantity.setting
  if (measurand === undefined || (setting !== 'ac-voltage' && setting !== 'dc-voltage')) return null
  // By ear or by a counter: nobody holds it to a revolution, and no two readings are alike.
  const near = spread(random, 1, 0.01)
  const rpm = engine === 'running' ? (measurand.rpm ?? fastIdle) : null
  const shown = (volts: number) => shownVolts(meter, setting, Math.abs(volts) * near, random)
  const { circuit } = now.truth
  if (circuit.legs?.[part] !== undefined) {
    const through = ohmsAt(now, placesFor(card, circuit) ?? [])
    return legVolts(now, part, rpm ?? 0, through)
      .map(shown)
      .join(' ')
  }
  const { power } = circuit
  const probes = power && placesAtWork(card, circuit, power)
  if (!power || !probes) return null
  const { volts } = atWork({ now, power, rpm, property: measurand.property, probes })
  return shown(volts(probes[0]) - volts(probes[1]))
}
