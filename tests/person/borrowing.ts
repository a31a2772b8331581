import { happens, seedOf } from '../../server/practice/world/chance.ts'
import { seeded } from '../bench/random.ts'
import type { CheckOnPage } from './page.ts'
import type { World } from './world/world.ts'

/** How often a shop has a part of the same model on the shelf or in a second machine. From memory. */
const isHad = 0.6

/** Minutes in which somebody finds out that there is none. From memory. */
export const askingAround = 5

const fetches =
  /^(?:Unless it is so already: f|F)etch an? (.*) of this model that is known to be good/

/** What the page has fetched and nobody here has; null where there is nothing of the kind. */
export function notToBeHad({ setups }: CheckOnPage, { seed }: World): string | null {
  const wanted = setups.flatMap((setup) => fetches.exec(setup)?.[1] ?? [])
  return wanted.find((part) => !happens(seeded(seedOf(seed, part, 'is had')), isHad)) ?? null
}
