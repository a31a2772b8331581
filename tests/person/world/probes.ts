import { happens, type Random, spread } from './chance.ts'
import { network } from './network.ts'
import type { Now } from './now.ts'
import { ohmsBetween } from './solve.ts'

/** How the probes meet the pins at one place. */
export interface Touching {
  readonly from: string
  readonly to: string
  /** Deep or dirty pins. */
  readonly awkward: boolean
  /** Clips hold by themselves: one that is on badly stays so. */
  readonly clipped: boolean
  /** Fingers on both tips. */
  readonly fingers: boolean
}

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

/** Ω that a two-wire ohmmeter meets: what is between the pins, the touch, the leads, and fingers beside it all. */
export function ohmsMet(now: Now, touching: Touching, contact: number): number {
  const { random, world } = now.site
  const between = ohmsBetween(network(now), touching.from, touching.to)
  const met = between + contact + world.person.leads
  // From hand to hand some hundred kΩ. Common practice.
  const body = spread(random, 400e3, 0.4)
  return touching.fingers ? 1 / (1 / met + 1 / body) : met
}
