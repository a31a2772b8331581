import { belief, beliefs, checkNamed, updated } from '../belief/belief.ts'
import { branchProbabilities, isCleared } from '../belief/branches.ts'
import { asItIsRead } from '../belief/elsewhere.ts'
import { suspects } from '../belief/suspects.ts'
import { furtherTake, withTake } from '../belief/takes.ts'
import { weighing } from '../belief/weighing.ts'
import { column, dot } from '../model/chances.ts'
import type { Evidence, Model } from '../model/model.ts'
import { named, numbered } from '../model/named.ts'
import type { Prospect, Weight } from '../model/walk.ts'
import { stakesOf } from '../plan/stakes.ts'
import { speaksAgainst } from './spoken-against.ts'

/**
 * What each outcome of a check would do to the tree, likeliest outcome first. Outcomes that can hardly
 * come (below half a percent) are left out. Of a check that has a reading: what one more take would do;
 * where none is foreseen, what the check would do in place of that reading.
 *
 * @throws RangeError if the model has no check of that name.
 */
export function prospects(model: Model, taken: readonly Evidence[], id: string): Prospect[] {
  const check = checkNamed(model, id)
  const item = taken.find((each) => each.check === id)
  const again = item && furtherTake(check, item)
  const evidence = again ? taken : taken.filter((each) => each !== item)
  const { chances } = again ?? asItIsRead(model, evidence, check)
  const history = beliefs(model, evidence)
  const now = numbered(history, evidence.length)
  const { nameFrom } = stakesOf(model)
  const before = branchProbabilities(model, numbered(history, 0))
  const branchesNow = branchProbabilities(model, now)
  return check.outcomes
    .map((outcome, o): Prospect => {
      const after = afterOutcome(model, evidence, now, id, o)
      const branchesAfter = branchProbabilities(model, after)
      const isAgainst = speaksAgainst(model, column(chances, o), now)
      const clears = [...branchesAfter]
        .filter(([name, p]) => {
          const start = named(before, name)
          return (
            isCleared(start, p) && !isCleared(start, named(branchesNow, name)) && isAgainst(name)
          )
        })
        .map(([name]) => name)
      const leads = numbered(suspects(model, after), 0)
      const probability = dot(now, column(chances, o))
      const prospect = { outcome, probability, clears: topmost(model, clears), leads }
      return leads.part !== null && leads.probability >= nameFrom([leads.part])
        ? { ...prospect, names: leads.part }
        : prospect
    })
    .filter((prospect) => prospect.probability >= 0.005)
    .sort((a, b) => b.probability - a.probability)
}

/**
 * How each reading speaks for or against a part: log2 of the chance of the reading if the part has
 * failed over its chance if not, each averaged over the cut sets by the belief before that reading.
 * (I. J. Good's weight of evidence, in bits.) Most telling first.
 *
 * @param part null for a cause that is none of the tree
 */
export function weights(
  model: Model,
  evidence: readonly Evidence[],
  part: string | null,
): Weight[] {
  const history = beliefs(model, evidence)
  const weigh = weighing()
  return evidence
    .map((item, i): Weight => {
      const before = numbered(history, i)
      const chance = weigh(checkNamed(model, item.check), item)
      let withPart = 0
      let without = 0
      let share = 0
      before.forEach((p, c) => {
        const joint = p * chance(c)
        const { parts } = numbered(model.cutSets, c)
        if (part === null ? parts.length === 0 : parts.includes(part)) {
          withPart += joint
          share += p
        } else without += joint
      })
      const bits = Math.log2(withPart / share / (without / (1 - share)))
      return { check: item.check, bits: Number.isNaN(bits) ? 0 : bits }
    })
    .sort((a, b) => Math.abs(b.bits) - Math.abs(a.bits))
}

/** The belief if this check now came out so: made for the first time, or once more. */
function afterOutcome(
  model: Model,
  evidence: readonly Evidence[],
  now: readonly number[],
  id: string,
  o: number,
): readonly number[] {
  const check = checkNamed(model, id)
  const after = withTake(evidence, check, o)
  const added = after[evidence.length]
  // What its like have seen bears on it, so those are weighed once more as well.
  return added === undefined || check.alike !== undefined
    ? belief(model, after)
    : updated(model, now, added)
}

/** Of these gates and faults, those that stand below none of the others. */
function topmost(model: Model, names: readonly string[]): string[] {
  const chosen = new Set(names)
  const covered = new Set<string>()
  for (const name of names) {
    for (const input of model.tree.gates.get(name)?.inputs ?? []) {
      if (chosen.has(input)) covered.add(input)
    }
  }
  return names.filter((name) => !covered.has(name))
}
