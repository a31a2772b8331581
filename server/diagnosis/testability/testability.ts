import type { Model } from '../model/model.ts'
import { named } from '../model/named.ts'
import { priorOf } from '../model/prior-of.ts'
import type { Step } from '../model/walk.ts'
import { type Steps, toTheEnd } from './steps.ts'
import { type TypicalWalk, typicalWalks } from './typical-walks.ts'

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
  /** Checks that no walk proposes, not for the likeliest pairs of faults and not for "nothing in this tree" either. */
  readonly neverAsked: readonly string[]
}

/**
 * Walks each explanation of a model, every check answered as it typically would be, and sums up for the
 * single faults: detected and isolated in the terms of IEEE Std 1522 (definitions confirmed in a secondary
 * source; the share isolated is of the detected ones, where other sources divide by all).
 *
 * @param impossible checks that are not at hand
 */
export function testability(
  model: Model,
  impossible: ReadonlySet<string> = new Set(),
): Testability {
  return toTheEnd(testabilityInSteps(model, impossible))
}

/** The same in steps of some milliseconds each, for those who have others to attend to meanwhile. */
export function* testabilityInSteps(
  model: Model,
  impossible: ReadonlySet<string>,
): Steps<Testability> {
  return summedUp(model, yield* typicalWalks(model, worthWalking(model), impossible))
}

/** So many combinations of faults are walked; hundreds of rarer ones ask for the same checks again. */
const combinations = 60

/** Every single fault, "nothing in this tree", and the likeliest combinations. */
function worthWalking({ cutSets }: Model): number[] {
  const all = [...cutSets.entries()]
  const likeliest = all
    .filter(([, { faults }]) => faults.length > 1)
    .sort(([, a], [, b]) => b.prior - a.prior)
    .slice(0, combinations)
  return [...all.filter(([, { faults }]) => faults.length < 2), ...likeliest].map(([c]) => c)
}

/** The sum of walks that were taken already: of every single fault at least. */
export function summedUp(model: Model, walks: ReadonlyMap<number, TypicalWalk>): Testability {
  const ended = model.cutSets.flatMap(({ faults: [fault, ...others], parts: [part], prior }, c) => {
    if (fault === undefined || part === undefined || others.length > 0) return []
    const { end, minutes } = named(walks, c)
    return [{ fault, prior, minutes, group: groupWith(end, part) }]
  })
  const detected = ended.flatMap((one) =>
    one.group === null ? [] : [{ ...one, group: one.group }],
  )
  const upTo = (most: number) =>
    priorOf(detected.filter(({ group }) => group.length <= most)) / (priorOf(detected) || 1)
  const asked = new Set(
    [...walks.values()].flatMap(({ evidence }) => evidence.map(({ check }) => check)),
  )
  return {
    faults: ended.length,
    detected: priorOf(detected) / (priorOf(ended) || 1),
    isolated: [upTo(1), upTo(2), upTo(3)],
    minutes:
      ended.reduce((sum, { prior, minutes }) => sum + prior * minutes, 0) / (priorOf(ended) || 1),
    groups: detected
      .filter(({ group }) => group.length > 1)
      .map(({ fault, group }) => ({ fault, parts: group })),
    missed: ended.filter(({ group }) => group === null).map(({ fault }) => fault),
    neverAsked: model.checks.map(({ id }) => id).filter((id) => !asked.has(id)),
  }
}

/** The parts a walk ended with, if the true one is among them. */
function groupWith(end: Step, part: string): readonly string[] | null {
  if (end.kind === 'named') return end.parts.join() === part ? [part] : null
  if (end.kind !== 'cannotSeparate') return null
  const parts = end.group.flatMap((suspect) => suspect.part ?? [])
  return parts.includes(part) ? parts : null
}
