import { happens, type Random, spread } from './chance.ts'

/**
 * Ω of contact of both probes together. A clean touch adds some hundredths of an ohm; one in thirty is a bad one, at
 * an awkward plug one in eight, and adds anything up to no contact at all. It never takes ohms away. From memory.
 */
export function contactOhms(random: Random, awkward: boolean): number {
  const clean = spread(random, awkward ? 0.12 : 0.04, 0.9)
  const isBad = happens(random, awkward ? 0.12 : 0.03)
  const bad = spread(random, 8, 2.2)
  const none = happens(random, 0.3)
  return isBad ? clean + (none ? Infinity : bad) : clean
}
