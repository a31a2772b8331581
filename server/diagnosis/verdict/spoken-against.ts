import { beliefs, checkNamed } from '../belief/belief.ts'
import { clearedBelow, holdingTable } from '../belief/branches.ts'
import { weighing } from '../belief/weighing.ts'
import { sumAt } from '../model/chances.ts'
import type { Evidence, Model } from '../model/model.ts'
import { named, numbered } from '../model/named.ts'

/** A reading speaks against a branch where something else in the tree makes it at least so many times as likely. */
const clearly = 2

/**
 * Whether a reading itself speaks against a gate or fault. What is likelier for all of them alike under a cause outside
 * the tree, as a blocked exhaust is, takes probability from every branch and proves none of them good. So it is compared
 * with what the rest of the tree gives it at best: the largest chance of the reading that at least a hundredth of the belief
 * in that rest stood for before it. That of the branch is the mean over its cut sets, by the same belief. The whole tree
 * has no rest, and so is never spoken against.
 *
 * @param chances of the reading, by cut set
 * @param before belief before it
 */
export function speaksAgainst(
  model: Model,
  chances: readonly number[],
  before: readonly number[],
): (branch: string) => boolean {
  const holding = holdingTable(model)
  const likeliestFirst = model.cutSets
    .flatMap(({ faults }, c) => (faults.length > 0 ? [c] : []))
    .sort((a, b) => numbered(chances, b) - numbered(chances, a))
  const all = sumAt(before, likeliestFirst)
  return (branch) => {
    const own = named(holding, branch)
    const isOwn = new Set(own)
    const enough = clearedBelow * (all - sumAt(before, own))
    let sum = 0
    const best = likeliestFirst.find((c) => {
      if (!isOwn.has(c)) sum += numbered(before, c)
      return !isOwn.has(c) && sum >= enough
    })
    return best !== undefined && clearly * meanOf(chances, before, own) <= numbered(chances, best)
  }
}

/** The same of the readings of a job: for the check of one of them and a branch of the model's tree. */
export function spokenAgainst(
  model: Model,
  evidence: readonly Evidence[],
): (check: string, branch: string) => boolean {
  const known = kept.get(evidence) ?? ofEach(model, evidence)
  kept.set(evidence, known)
  return (check, branch) => named(known, check)(branch)
}

type OfEach = ReadonlyMap<string, (branch: string) => boolean>

/** The readings of a job are one list, asked about many times, and weighed with one model. */
const kept = new WeakMap<readonly Evidence[], OfEach>()

function ofEach(model: Model, evidence: readonly Evidence[]): OfEach {
  const history = beliefs(model, evidence)
  const weigh = weighing()
  return new Map(
    evidence.map((item, i) => {
      const chance = weigh(checkNamed(model, item.check), item)
      const chances = model.cutSets.map((_, c) => chance(c))
      return [item.check, speaksAgainst(model, chances, numbered(history, i))]
    }),
  )
}

function meanOf(
  chances: readonly number[],
  weights: readonly number[],
  places: readonly number[],
): number {
  const all = sumAt(weights, places)
  const sum = places.reduce((sum, c) => sum + numbered(chances, c) * numbered(weights, c), 0)
  return all > 0 ? sum / all : 0
}
