import { happens, type Random } from '../../../server/practice/world/chance.ts'
import { partNamed } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, cannotTell, type Seen } from '../seen.ts'
import type { World } from '../world/world.ts'
import { lasting } from './spark.ts'

/**
 * An owner answers from memory: asked again he says the same. One in ten has no idea; of the others some say what they
 * would like to have seen.
 */
export const ask =
  (recall: (world: World, random: Random, check: CheckHere) => string): Observation =>
  (check): Seen => {
    const { world } = check.site
    const random = lasting(world.seed, check.card.id, 'owner')
    return happens(random, 0.1)
      ? cannotTell('the owner does not know')
      : answer(recall(world, random, check))
  }

/** How well one remembers: what one had in hand, what one saw, what one has to call something. From memory. */
export const [sure, fair, vague] = [0.9, 0.78, 0.62]

/** What he noticed, or what he says where he did not look. */
export const noticed = (random: Random, chance: number, truth: string, other: string) =>
  happens(random, chance) ? truth : other

export const modes = ({ faults }: World) => faults.map(({ mode }) => mode)
export const rolesOf = ({ faults, machine }: World) =>
  faults.map(({ part }) => partNamed(machine, part).role)
export const comesWith = (world: World, what: string) =>
  world.faults.some(({ effect }) => effect.comes?.with === what)
