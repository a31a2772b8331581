import type { Evidence, Model } from './model.ts'
import { walk } from './walk.ts'
import type { Step } from './walk-types.ts'

/** How well a tree's checks find its single faults; shares are weighted by the faults' rates. */
export interface Testability {
  readonly faults: number
  /** Share of the faults, by rate, that some reading tells from "nothing in this tree". */
  readonly detected: number
  /** Share of the detected ones that end in a group of at most 1, 2, 3 parts. */
  readonly isolated: readonly [number, number, number]
  /** Expected minutes to the end, by rate. */
  readonly minutes: number
  /** Groups that no check at hand tells apart, with the fault that ended in them. */
  readonly groups: readonly { readonly fault: string; readonly parts: readonly string[] }[]
  /** Faults that end outside the tree, in a contradiction, or under another part's name. */
  readonly missed: readonly string[]
  /** Checks that none of these walks ever proposed. */
  readonly neverAsked: readonly string[]
}

/**
 * Walks each single fault of a model, every check answered as that fault typically would, and sums up:
 * faults detected and isolated in the terms of IEEE Std 1522 (definitions confirmed in a secondary
 * source; the share isolated is of the detected ones, where other sources divide by all).
 *
 * @param impossible checks that are not at hand
 */
export function testability(
  model: Model,
  impossible: ReadonlySet<string> = new Set(),
): Testability {
  const single = model.cutSets.flatMap(({ faults }, c) => (faults.length === 1 ? [c] : []))
  const walks = single.map((c) => ({ c, ...typicalWalk(model, c, impossible) }))
  const rate = (some: readonly { readonly c: number }[]) =>
    some.reduce((sum, { c }) => sum + model.cutSets[c]!.prior, 0)
  const ended = walks.map((each) => ({
    ...each,
    group: groupWith(each.end, partOf(model, each.c)),
  }))
  const detected = ended.filter(({ group }) => group !== null)
  const upTo = (most: number) =>
    rate(detected.filter(({ group }) => group!.length <= most)) / (rate(detected) || 1)
  const asked = new Set(walks.flatMap(({ asked }) => asked))
  return {
    faults: single.length,
    detected: rate(detected) / (rate(ended) || 1),
    isolated: [upTo(1), upTo(2), upTo(3)],
    minutes:
      ended.reduce((sum, { c, minutes }) => sum + model.cutSets[c]!.prior * minutes, 0) /
      (rate(ended) || 1),
    groups: detected
      .filter(({ group }) => group!.length > 1)
      .map(({ c, group }) => ({ fault: model.cutSets[c]!.faults[0]!, parts: group! })),
    missed: ended.flatMap(({ c, group }) => (group === null ? model.cutSets[c]!.faults : [])),
    neverAsked: model.checks.map(({ id }) => id).filter((id) => !asked.has(id)),
  }
}

/** Follows the tool's own proposals, each answered with the likeliest outcome under one cut set. */
export function typicalWalk(
  model: Model,
  cutSet: number,
  impossible: ReadonlySet<string>,
): {
  readonly end: Step
  readonly minutes: number
  readonly asked: readonly string[]
  readonly evidence: readonly Evidence[]
} {
  const evidence: Evidence[] = []
  let minutes = 0
  for (;;) {
    const { step } = walk(model, { evidence, impossible })
    if (step.kind !== 'ask') {
      return { end: step, minutes, asked: evidence.map(({ check }) => check), evidence }
    }
    minutes += step.proposal.minutes
    const check = model.checks.find(({ id }) => id === step.proposal.check)!
    const row = check.chances[cutSet]!
    const typical = row.indexOf(Math.max(...row))
    evidence.push({ check: check.id, outcomes: row.map((_, o) => (o === typical ? 1 : 0)) })
  }
}

const partOf = (model: Model, c: number): string => model.cutSets[c]!.parts[0]!

/** The parts a walk ended with, if the true one is among them. */
function groupWith(end: Step, part: string): readonly string[] | null {
  if (end.kind === 'named') return end.parts.join() === part ? [part] : null
  if (end.kind !== 'cannotSeparate') return null
  const parts = end.group.flatMap((suspect) => suspect.part ?? [])
  return parts.includes(part) ? parts : null
}
