import { partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Effect } from '../effect.ts'
import type { Now } from '../now.ts'
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
