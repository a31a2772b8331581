import type { Effect } from '../effect.ts'
import type { Now } from '../now.ts'
import { partsIn } from '../sheet.ts'
import { celsiusOf } from '../temperature.ts'
import { loopOhms } from './paths.ts'

/**
 * V peak that a winding makes, open and with both ends free: in proportion to speed and magnets.
 * Ferrite loses about 0.2 % of its flux per kelvin.
 */
export function emf(now: Now, part: string, rpm: number): number {
  const { peak, rpm: at } = now.good(part)
  return (peak * magnets(now) * (now.effect(part).gives ?? 1) * rpm) / at
}

export function magnets(now: Now): number {
  const flywheel = partsIn(now.site.world.machine, 'flywheel')[0]!.id
  return (now.effect(flywheel).gives ?? 1) * (1 - 0.002 * (celsiusOf(now.site, flywheel) - 20))
}

/**
 * Share of its EMF that a winding keeps at work, where the box holds one of its ends at ground: what lies
 * between a path to metal and that end is short-circuited through the path.
 */
export function keptAtWork(
  { leak = Infinity, at = 0.5, across = Infinity, breaksDownAt = 0 }: Effect,
  ohms: number,
  volts: number,
): number {
  const beside = across / (across + ohms)
  const share = Number.isFinite(across) ? beside : 1
  if (!Number.isFinite(leak) || volts < breaksDownAt) return share
  const shorted = (1 - at) * ohms
  return share * (at + ((1 - at) * leak) / (leak + shorted || 1))
}

/** V peak that arrives at a box whose input is `load` Ω. */
export function arriving(now: Now, part: string, wires: string, rpm: number, load: number): number {
  const volts = emf(now, part, rpm)
  const loop = loopOhms(now, part)
  if (!Number.isFinite(loop)) return 0
  const { ohms } = now.good(part)
  const own = keptAtWork(now.effect(part), ohms, volts)
  const way = keptAtWork({ ...now.effect(wires), at: 0 }, ohms, volts)
  const plug = sharedPlug(now, part)
  return (volts * own * way * keptAtWork({ ...plug, at: 0 }, ohms, volts) * load) / (load + loop)
}

function sharedPlug(now: Now, part: string): Effect {
  const { ends, joints } = now.site.world.circuit
  const plug = ends[part]?.[0]
  const shared = Object.entries(joints).find(
    ([name, pins]) => name === plug && pins.some(([on]) => on === plug),
  )
  return shared ? now.effect(shared[0]) : {}
}

/** A passive peak-hold adaptor. Silicon, 1 µF, and 1 MΩ beside a meter of 10 MΩ: from memory. */
export const adaptor = { farad: 1e-6, load: 1 / (1e-6 + 1e-7), drop: 0.55 }

/** Pulses that an adaptor is fed with: half sines `width` s long, one every `period` s. */
export interface Pulses {
  readonly period: number
  readonly width: number
}

/**
 * V that the meter behind the adaptor shows for a source of `peak` V and `ohms` Ω. The mean current into the
 * capacitor, (peak·sin θ − V − drop)/ohms over the part of the half sine that drives it, is what the load
 * takes out, V/load; solved for V by halving.
 */
export function shownBehindAdaptor(peak: number, ohms: number, { period, width }: Pulses): number {
  let low = 0
  let high = Math.max(0, peak - adaptor.drop)
  for (let i = 0; i < 50; i += 1) {
    const volts = (low + high) / 2
    const spent = (volts * period) / adaptor.load
    if (charge(peak, volts + adaptor.drop, Math.max(ohms, 0.1), width) > spent) low = volts
    else high = volts
  }
  // From pulse to pulse the capacitor runs down; the meter shows its mean.
  return low * (1 - period / (2 * adaptor.farad * adaptor.load))
}

/** Coulombs that one half sine drives into a capacitor that stands at `held` V. */
function charge(peak: number, held: number, ohms: number, width: number): number {
  if (peak <= held) return 0
  const from = Math.asin(held / peak)
  return ((width / Math.PI) * (2 * peak * Math.cos(from) - held * (Math.PI - 2 * from))) / ohms
}

/** Twelve poles give six whole waves a turn. Common practice. */
export const waves = (rpm: number): Pulses => ({ period: 10 / rpm, width: 5 / rpm })
/** One lug a turn passes a pickup within some degrees. From memory. */
export const lug = (rpm: number): Pulses => ({ period: 60 / rpm, width: 1 / rpm })
