import { checkNamed } from '../belief/belief.ts'
import { likeliest } from '../belief/likeliest.ts'
import { isContradiction, leastSurprised } from '../belief/surprise.ts'
import { explanations, suspects } from '../belief/suspects.ts'
import { furtherTake } from '../belief/takes.ts'
import { sumAt } from '../model/chances.ts'
import type { Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { together } from '../model/stands.ts'
import type { FirstFit, Misfit, Step, Suspect, WalkOptions } from '../model/walk.ts'
import { minutesToFit } from '../plan/fitting.ts'
import { isSpokenAgainst } from '../plan/floors.ts'
import { gainTableOf } from '../plan/gain-table.ts'
import { membersOf } from '../plan/grouped-rows.ts'
import { rank } from '../plan/next-check.ts'
import type { Plan } from '../plan/plan.ts'
import { rowsOf } from '../plan/rows.ts'
import { type Stakes, stakesOf } from '../plan/stakes.ts'
import { fitOrder } from './first-fit.ts'
import { explainsIfLeftOut, outsideHangsOn } from './in-doubt.ts'

/** Without prices, a check that is expected to tell less than this is not worth asking for, in bits. */
export const worthAsking = 0.01

/** The ambiguity group gathers suspects until this share of the probability is in it. */
const groupShare = 0.95

/**
 * The step to take: a contradiction before all else (nothing may be named on readings that cannot be),
 * then a name, then "outside this tree", then the next check, and where no check would tell anything,
 * the group that cannot be separated.
 *
 * With prices, one stops when no check is worth its minutes against the expected loss of being wrong,
 * and then names what is likely enough to be named.
 */
export function decide(
  model: Model,
  belief: readonly number[],
  options: WalkOptions,
  plan: Plan,
): Step {
  const stakes = stakesOf(model)
  const asks = model.wrongMinutes === undefined ? askTelling(plan) : askWorth(plan, options)
  const mayName = model.wrongMinutes === undefined || asks === null
  return (
    contradiction(model, belief, options) ??
    (mayName ? namedStep(model, belief, options, stakes) : null) ??
    asks ??
    cannotSeparate(model, belief, options)
  )
}

function contradiction(
  model: Model,
  belief: readonly number[],
  { evidence, impossible }: WalkOptions,
): Step | null {
  const best = leastSurprised(model, evidence)
  if (!isContradiction(model, best)) return null
  const explains = explainsIfLeftOut(model, evidence)
  const canBeMade = ({ check }: Misfit) => (impossible.has(check) ? 0 : 1)
  const misfits = best.readings
    .map(
      ({ item, bits }): Misfit => ({
        check: item.check,
        bits,
        explains: explains.get(item.check) ?? 0,
        tells: impossible.has(item.check) ? 0 : tellsByFurtherTake(model, belief, item),
      }),
    )
    .filter((item) => item.bits >= 1)
    .sort((a, b) => canBeMade(b) - canBeMade(a) || b.explains - a.explains || b.tells - a.tells)
  return { kind: 'contradiction', misfits }
}

/** What one more take of a reading is expected to tell, in bits. */
function tellsByFurtherTake(model: Model, belief: readonly number[], item: Evidence): number {
  const check = furtherTake(checkNamed(model, item.check), item)
  if (check === null) return 0
  return gainTableOf(model).drop(belief, rowsOf(check))
}

function namedStep(
  model: Model,
  belief: readonly number[],
  { evidence }: WalkOptions,
  { nameFrom }: Stakes,
): Step | null {
  if (evidence.length === 0) return null
  const { of, parts } = explanations(model)
  const sums = membersOf(of, parts.length).map((cutSets) => sumAt(belief, cutSets))
  const best = likeliest(sums)
  const probability = Math.min(1, numbered(sums, best))
  const blamed = numbered(parts, best)
  const floor = nameFrom(blamed, blamed.length === 0 && isSpokenAgainst(model, belief))
  if (probability < floor) return null
  if (blamed.length > 0) return { kind: 'named', parts: blamed, probability }
  const hangsOn = outsideHangsOn(model, evidence)
  return {
    kind: 'outsideThisTree',
    probability,
    ...(hangsOn && hangsOn.without < floor && { again: hangsOn.check }),
  }
}

function askTelling({ proposals }: Plan): Step | null {
  const proposal = proposals.find((each) => each.bits >= worthAsking)
  return proposal === undefined ? null : { kind: 'ask', proposal }
}

/** The first reading is always asked for: without one nobody would believe a verdict. */
function askWorth({ proposals, worthAsking }: Plan, { evidence }: WalkOptions): Step | null {
  const [proposal] = proposals
  if (proposal === undefined || !(proposal.bits > 0)) return null
  return worthAsking || evidence.length === 0 ? { kind: 'ask', proposal } : null
}

function cannotSeparate(model: Model, belief: readonly number[], options: WalkOptions): Step {
  const group: Suspect[] = []
  let share = 0
  for (const suspect of suspects(model, belief)) {
    if (share >= groupShare) break
    group.push(suspect)
    share += suspect.probability
  }
  const answered = new Set(options.evidence.map((item) => item.check))
  const split = rank(model, belief, (check) => !answered.has(check.id), together).find(
    (each) => each.bits >= worthAsking,
  )
  const pair = likeliestPair(model, belief)
  const firstFit = model.wrongMinutes === undefined ? null : fitFirst(model, group)
  return {
    kind: 'cannotSeparate',
    group,
    ...(split && { splitBy: split.check }),
    ...(pair && { together: pair }),
    ...(firstFit && { firstFit }),
  }
}

/** The likeliest explanation where it takes several parts together, and is likelier than all others. */
function likeliestPair(
  model: Model,
  belief: readonly number[],
): Extract<Step, { kind: 'cannotSeparate' }>['together'] | null {
  const { of, parts } = explanations(model)
  const sums = membersOf(of, parts.length).map((cutSets) => sumAt(belief, cutSets))
  const best = likeliest(sums)
  const [blamed, probability] = [numbered(parts, best), numbered(sums, best)]
  return blamed.length > 1 && probability > 0.5 ? { parts: blamed, probability } : null
}

/**
 * Of a group, the part to fit first when no check is worth its minutes: by probability over what it
 * costs to fit (see `fitOrder`). None where the group holds no part.
 */
function fitFirst(model: Model, group: readonly Suspect[]): FirstFit | null {
  const fits = group.flatMap(({ part, probability }) =>
    part === null ? [] : [{ part, probability, cost: minutesToFit(model, [part]) }],
  )
  const [first] = fitOrder(fits)
  if (first === undefined) return null
  const { part, probability, cost } = numbered(fits, first)
  return { part, minutes: cost, probability }
}
