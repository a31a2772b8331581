import type { CheckCard } from '../../../knowledge/case.ts'
import type { Reads } from '../../../knowledge/schema/wiring/reads.ts'
import { type Pulses, shownBehindAdaptor, waves } from '../../world/adaptor.ts'
import { type Random, spread } from '../../world/chance.ts'
import { contactOhms } from '../../world/contact.ts'
import { shownVolts } from '../../world/display.ts'
import { placesFor } from '../../world/net/meet.ts'
import type { Moment } from '../../world/net/moment.ts'
import { limitsOn, partNamed } from '../../world/sheet.ts'
import { openPeak, peakAtWork } from '../../world/work/peak.ts'
import { type Pulse, pulseAt } from '../../world/work/pulse.ts'
import type { Hidden } from '../hidden.ts'
import type { Pull } from '../making.ts'
import { speedOf } from '../speed.ts'

/** Readings that a peak adaptor takes. */
type Peak = 'peak' | 'peak-at-work' | 'pulse'
export const isPeak = (reads: Reads): reads is Peak => reads in sources

/** What the meter shows behind a peak adaptor; null where nobody knows what it hangs on. */
export function peakShown(
  { meter }: Hidden,
  now: Moment,
  card: CheckCard,
  reads: Peak,
  pull: Pull,
  random: Random,
): string | null {
  const contact = contactOhms(random, card.spot?.awkward ?? false)
  // Three pulls, the best of them; of an engine that runs, near the speed that is asked for.
  const speeds = [0, 1, 2].map(() => speedOf(pull, random))
  const running = (card.measurand?.rpm ?? fast) * spread(random, 1, 0.02)
  const rpm = card.engine === 'running' ? running : Math.max(...speeds)
  const source = sources[reads](now, card, rpm)
  if (source === null) return null
  const { volts, ohms } = source
  const pulses: Pulses = reads === 'pulse' ? { period: 60 / rpm, width: dump } : waves(rpm)
  const isOpen = !Number.isFinite(ohms + contact)
  const shown = isOpen ? 0 : shownBehindAdaptor(volts, ohms + contact, pulses)
  return shownVolts(meter, 'dc-voltage', shown, random)
}

/** rpm at speed where a sheet names none, and s that the discharge of a capacitor into a coil lasts. From memory. */
const fast = 4000
const dump = 2e-4

const sources: Readonly<Record<Peak, (now: Moment, card: CheckCard, rpm: number) => Pulse | null>> =
  {
    peak: (now, card, rpm) => {
      const [places] = placesFor(card, now.truth.circuit) ?? []
      return places === undefined ? null : openPeak(now, card.part ?? '', places, rpm)
    },
    'peak-at-work': (now, { part = '' }, rpm) => peakAtWork(now, part, rpm),
    pulse: (now, { part = '', spot, engine, measurand }, rpm) => {
      const plug = spot?.connector?.id
      const own = partNamed(now.truth.machine, part)
      const limits = measurand && limitsOn(own, measurand.property)
      if (plug === undefined || limits?.low === undefined) return null
      const { peak, rpm: at, least } = now.truth.good(part)
      // At speed the charge is cut off at what the box stands; on a pull it grows with that.
      const speed = engine === 'running' ? 1 : rpm / (limits.rpm ?? at)
      return pulseAt(now, part, plug, rpm, limits.low * (peak / least), speed)
    },
  }
