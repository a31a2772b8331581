import {
  lug,
  type Pulses,
  shownBehindAdaptor,
  waves,
} from '../../../server/practice/world/adaptor.ts'
import { between, happens } from '../../../server/practice/world/chance.ts'
import { contactOhms } from '../../../server/practice/world/contact.ts'
import { shown } from '../../../server/practice/world/display.ts'
import { partNamed, partsIn } from '../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../server/practice/world/solve.ts'
import type { CheckHere, Observation } from '../check.ts'
import { type Seen, typed } from '../seen.ts'
import { harness } from '../world/network.ts'
import type { Now } from '../world/now.ts'
import type { Doing } from '../world/site.ts'
import { pairVolts } from '../world/systems/charging.ts'
import { cruise } from '../world/systems/engine.ts'
import { fuel } from '../world/systems/fuel.ts'
import { ignition } from '../world/systems/ignition.ts'
import { acVolts, lights } from '../world/systems/lights.ts'
import { arriving, emf, keptAtWork } from '../world/systems/volts.ts'
import { byEar, isSeen, running, threePulls } from './pulling.ts'
import { placesOn, slipped } from './reading.ts'

/** Best of three pulls behind the adaptor. A clip that is on badly is so for all of them. */
function bestOfThree(
  check: CheckHere,
  source: (now: Now, rpm: number) => { peak: number; ohms: number; pulses: Pulses },
): Seen {
  const { site, card } = check
  const clip = contactOhms(site.random, card.spot?.awkward ?? false)
  const volts = threePulls(check, (now, rpm) => {
    const { peak, ohms, pulses } = source(now, rpm)
    return Number.isFinite(ohms + clip) ? shownBehindAdaptor(peak, ohms + clip, pulses) : 0
  })
  if (isSeen(volts)) return volts
  return typed(shown(site.world.meter, 'dc-voltage', Math.max(...volts), site.random))
}

/** A winding with one plug apart: its EMF, behind all the ohms of the way to the clips. */
const peakVoltage: Observation = (check) => {
  const { site, part } = check
  const { kind } = partNamed(site.world.machine, part)
  return bestOfThree(check, (now, rpm) => {
    const [from, to] = slipped(check, placesOn(check))
    const ohms = ohmsBetween(harness(now), from, to)
    const { across = Infinity } = sharedPlug(now, part)
    const peak = emf(now, part, rpm) * keptAtWork({ across }, now.good(part).ohms, 0)
    return { peak, ohms, pulses: kind === 'pickup' ? lug(rpm) : waves(rpm) }
  })
}

function sharedPlug(now: Now, part: string) {
  const plug = now.site.world.circuit.ends[part]?.[0]
  const shared = Object.keys(now.site.world.circuit.joints).find((name) => name === plug)
  return shared === undefined ? {} : now.effect(shared)
}

/** The same with all joined: the igniter holds one end at ground, so that a leak takes its share. */
const peakAtWork: Observation = (check) => {
  const { site, part } = check
  const { role } = partNamed(site.world.machine, part)
  const wires = partsIn(site.world.machine, 'exciter-wires')
  const wire = role === 'run-exciter' ? wires.at(-1)! : wires[0]!
  return bestOfThree(check, (now, rpm) => ({
    peak: arriving(now, part, wire.id, rpm, chargingInput),
    ohms: now.good(part).ohms,
    pulses: waves(rpm),
  }))
}

/** Ω that a charged igniter draws from its exciter at. From memory. */
const chargingInput = 20e3

/** The capacitor of the igniter behind some ohms of its own: short and hard. */
function coilPulse(now: Now, output: string, rpm: number) {
  const { pulse, behind } = ignition(now, rpm).outputs.get(output)!
  return { peak: pulse, ohms: 5 + behind, pulses: { period: 60 / rpm, width: 2e-4 } }
}

const pulseAtCoil: Observation = (check) =>
  bestOfThree(check, (now, rpm) => coilPulse(now, check.output, rpm))

const pulseAtSpeed: Observation = (check) =>
  running(check, (now) => {
    const rpm = byEar(check, 4500)
    const { peak, ohms, pulses } = coilPulse(now, check.output, rpm)
    const read = Number.isFinite(ohms) ? shownBehindAdaptor(peak, ohms, pulses) : 0
    return typed(shown(check.site.world.meter, 'dc-voltage', read, check.site.random))
  })

const pumpVolts: Observation = (check) =>
  bestOfThree(check, (now, rpm) => {
    const wires = partsIn(now.site.world.machine, 'pump-wires')[0]!.id
    const { series = 0 } = now.effect(wires)
    return { peak: fuel(now, rpm).feed, ohms: 2 + series, pulses: waves(rpm) }
  })

/** AC volts while it runs; of bad back-probes nothing is read. */
function acWhileRunning(
  check: CheckHere,
  volts: (now: Now, rpm: number) => number,
  what?: Doing,
): Seen {
  const { random, world } = check.site
  const misses = happens(random, check.card.spot?.awkward ? 0.06 : 0.02)
  return running(
    check,
    (now) => {
      const read = misses ? 0.01 : volts(now, byEar(check, cruise))
      return typed(shown(world.meter, 'ac-voltage', read, random))
    },
    what,
  )
}

const toMetal = ({ card }: CheckHere) => card.spot!.touch.includes('ground')

const groundDrop: Observation = (check) => {
  const { role } = partNamed(check.site.world.machine, check.part)
  return acWhileRunning(
    check,
    (now, rpm) => {
      const { regulatorDrop, atLamp, atLampToMetal } = lights(now, rpm, true)
      return role === 'regulator-ground' ? regulatorDrop : Math.max(0.01, atLampToMetal - atLamp)
    },
    { shaken: check.part },
  )
}

const legVolts: Observation = (check) =>
  running(check, (now) => {
    const { random, world } = check.site
    const rpm = byEar(check, 3000)
    const plug = check.card.spot!.connector!.id
    const volts = pairVolts(now, rpm, plug).map((each) => each * between(random, 0.98, 1.02))
    return typed(volts.map((each) => shown(world.meter, 'ac-voltage', each, random)).join(' '))
  })

const lampsOn = (check: CheckHere) => check.site.standing.lamps === 'on'

export const voltsChecks: Readonly<Record<string, Observation>> = {
  'peak-voltage': peakVoltage,
  'peak-voltage-when-hot': peakVoltage,
  'peak-voltage-at-work': peakAtWork,
  'peak-at-work-when-hot': peakAtWork,
  'pulse-at-coil': pulseAtCoil,
  'pulse-strength': pulseAtCoil,
  'pulse-when-hot': pulseAtCoil,
  'pulse-at-speed': pulseAtSpeed,
  'pump-volts': pumpVolts,
  'pump-volts-when-hot': pumpVolts,
  'lighting-ac-voltage': (check) => acWhileRunning(check, acVolts),
  'lighting-volts': (check) =>
    acWhileRunning(check, (now, rpm) => {
      const { atLamp, atLampToMetal } = lights(now, rpm, lampsOn(check))
      return toMetal(check) ? atLampToMetal : atLamp
    }),
  'regulated-volts': (check) =>
    acWhileRunning(check, (now, rpm) => lights(now, rpm, lampsOn(check)).atRegulator),
  'ground-drop': groundDrop,
  'leg-volts': legVolts,
}
