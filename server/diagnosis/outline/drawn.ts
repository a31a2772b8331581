import type { CutSet, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { priorOf } from '../model/prior-of.ts'
import type { Step } from '../model/walk.ts'
import { type Steps, toTheEnd } from '../testability/steps.ts'
import { followed, type Path, seed } from './grown.ts'
import type { HowItEnds, Outline, OutlineOptions, Shares } from './outline.ts'
import { stages } from './stages.ts'

/** Draws a walk ahead; see `outlineInSteps`. */
export function outline(model: Model, options: OutlineOptions): Outline {
  return toTheEnd(outlineInSteps(model, options))
}

/**
 * Follows single faults and "nothing in this tree" by falling prior until enough of them end under their own names;
 * where the checks at hand cannot name so much, until as much ends named, in a stated group, or rightly outside the
 * tree. A step is one look at what to do next.
 */
export function* outlineInSteps(model: Model, options: OutlineOptions): Steps<Outline> {
  const root = seed(model, options.impossible)
  const all = byFallingPrior(model)
  const total = priorOf(all)
  const paths: Path[] = []
  let shares: Shares = { named: 0, grouped: 0, outside: 0, astray: 0, left: 1 }
  for (const { explanation, prior } of all) {
    if (isEnough(shares, options.enough)) break
    const path = yield* followed(model, root, explanation, options.impossible)
    const ends = howItEnds(numbered(model.cutSets, explanation), path.end)
    paths.push(path)
    shares = moved(shares, ends, prior / total)
  }
  return {
    start: root.walk,
    first: stages(model, paths, options),
    shares,
    followed: paths.map(({ explanation, end }) => ({
      explanation,
      ends: howItEnds(numbered(model.cutSets, explanation), end),
    })),
    left: all.slice(paths.length).map(({ explanation }) => explanation),
  }
}

function byFallingPrior({ cutSets }: Model) {
  return cutSets
    .map(({ faults, prior }, explanation) => ({ faults, prior, explanation }))
    .filter(({ faults }) => faults.length < 2)
    .sort((a, b) => b.prior - a.prior || a.explanation - b.explanation)
}

/** Whether what was followed will do; where names alone cannot come to it, stated ends count as well. */
function isEnough({ named, grouped, outside, left }: Shares, enough: number): boolean {
  const canName = named + left >= enough
  return named >= enough || (!canName && named + grouped + outside >= enough)
}

const moved = (shares: Shares, to: HowItEnds, share: number): Shares => ({
  ...shares,
  [to]: shares[to] + share,
  // Some hundred shares miss 1 by a rounding.
  left: Math.max(0, shares.left - share),
})

function howItEnds({ parts }: CutSet, end: Step): HowItEnds {
  if (end.kind === 'named' && end.parts.join() === parts.join()) return 'named'
  if (end.kind === 'outsideThisTree' && parts.length === 0) return 'outside'
  const blamed = parts[0] ?? null
  const isGrouped = end.kind === 'cannotSeparate' && end.group.some(({ part }) => part === blamed)
  return isGrouped ? 'grouped' : 'astray'
}
