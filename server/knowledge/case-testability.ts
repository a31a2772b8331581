import { entry } from '../diagnosis/model/named.ts'
import type { Steps } from '../diagnosis/testability/steps.ts'
import { type Testability, testabilityInSteps } from '../diagnosis/testability/testability.ts'
import type { Case } from './case.ts'
import type { Knowledge } from './knowledge.ts'
import { Place } from './schema/shared.ts'
import type { Tools } from './schema/tables.ts'

/** How well the checks of one case find its faults, and with which tools. */
export interface CaseTestability {
  readonly checks: number
  /** Every check possible. */
  readonly full: Testability
  /** At each place, with the tools one has there as a rule. */
  readonly at: Readonly<Record<Place, Testability>>
  /** Checks that no walk proposes, neither with every tool nor with the usual ones of any place. */
  readonly neverPay: readonly string[]
}

/** Works out a case in steps: once with a full tool box, then once for each place. */
export function* caseTestability(
  { tools }: Knowledge,
  { model, checks }: Case,
): Steps<CaseTestability> {
  const full = yield* testabilityInSteps(model, new Set())
  const at: Partial<Record<Place, Testability>> = {}
  for (const place of Place.options) {
    at[place] = yield* testabilityInSteps(model, outOfReach(checks, place, tools))
  }
  const boxes = [full, ...Object.values(at)]
  return {
    checks: checks.size,
    full,
    at: at as Record<Place, Testability>,
    neverPay: [...checks.keys()].filter((id) =>
      boxes.every(({ neverAsked }) => neverAsked.includes(id)),
    ),
  }
}

/** Checks that cannot be made at a place with the tools one has there as a rule. */
export function outOfReach(
  checks: Case['checks'],
  place: Place,
  { tools }: Tools,
): ReadonlySet<string> {
  const missing = [...checks.values()].filter(
    (card) =>
      !card.where.includes(place) ||
      card.tools.some(({ id }) => !entry(tools, id).usual.includes(place)),
  )
  return new Set(missing.map(({ id }) => id))
}

/** Kinds of check of which not one pays in any of the cases, by name. */
export function kindsThatNeverPay(
  { checkKinds }: Knowledge,
  cases: readonly { readonly checks: Case['checks']; readonly neverPay: readonly string[] }[],
): string[] {
  const paying = cases.flatMap(({ checks, neverPay }) => {
    const never = new Set(neverPay)
    return [...checks.keys()].filter((id) => !never.has(id)).map(kindOf)
  })
  const known = new Set(paying)
  return [...checkKinds.keys()].filter((kind) => !known.has(kind))
}

/** A check is named after its kind first, then after what it is made for. */
const kindOf = (check: string): string => check.replace(/\..*/, '')
