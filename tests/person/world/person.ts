import { between, happens, type Random, spread } from '../../../server/practice/world/chance.ts'

/** Who stands at the machine, with what in hand. All figures from memory. */
export interface Person {
  /** Of a brisk pull, warm, rpm. */
  readonly rpm: number
  /** Touches of the probes that are typed where the page welcomes several. */
  readonly touches: number
  /** Chance that a reading is taken at the wrong pin or typed a thousand off. */
  readonly slips: number
  /** Chance that a look or a listening comes out wrong. */
  readonly misses: number
  /** Ω of the two leads together. */
  readonly leads: number
}

export function drawPerson(random: Random): Person {
  return {
    rpm: Math.min(800, Math.max(300, spread(random, 520, 0.2))),
    touches: happens(random, 0.3) ? 3 : 1,
    slips: 0.015,
    misses: 0.02,
    leads: between(random, 0.1, 0.5),
  }
}
