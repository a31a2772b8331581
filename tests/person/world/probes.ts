import { spread } from '../../../server/practice/world/chance.ts'
import { ohmsBetween } from '../../../server/practice/world/solve.ts'
import { network } from './network.ts'
import type { Now } from './now.ts'

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

/** Ω that a two-wire ohmmeter meets: what is between the pins, the touch, the leads, and fingers beside it all. */
export function ohmsMet(now: Now, touching: Touching, contact: number): number {
  const { random, world } = now.site
  const between = ohmsBetween(network(now), touching.from, touching.to)
  const met = between + contact + world.person.leads
  // From hand to hand some hundred kΩ. Common practice.
  const body = spread(random, 400e3, 0.4)
  return touching.fingers ? 1 / (1 / met + 1 / body) : met
}
