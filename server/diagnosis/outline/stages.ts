import { belief, checkNamed } from '../belief/belief.ts'
import { suspects } from '../belief/suspects.ts'
import { withTake } from '../belief/takes.ts'
import type { Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import type { Path } from './grown.ts'
import { makeSure } from './make-sure.ts'
import type { Answered, Ending, OutlineOptions, Stage } from './outline.ts'

type Kept = Pick<OutlineOptions, 'always' | 'sureFrom'>

/** Where some paths have come together. */
interface Stretch {
  readonly paths: readonly Path[]
  /** So many of their answers lie behind. */
  readonly behind: number
  /** Readings of the checks that stand on the outline. */
  readonly made: readonly Evidence[]
  /** Checks that were passed over: all paths answer them alike. */
  readonly passed: readonly Answered[]
}

/** Puts paths together as far as they answer alike, and keeps of the checks between only those that part them. */
export function stages(model: Model, paths: readonly Path[], kept: Kept): Stage {
  return stage(model, { paths, behind: 0, made: [], passed: [] }, kept)
}

function stage(model: Model, stretch: Stretch, kept: Kept): Stage {
  const { paths, behind, made, passed } = stretch
  // On the same way, so the same check comes next for all, or none.
  const [first] = numbered(paths, 0).answered.slice(behind)
  if (first === undefined) return ending(model, stretch, kept)
  const check = checkNamed(model, first.check)
  const outcomes = [...new Set(paths.map(({ answered }) => numbered(answered, behind).outcome))]
  if (outcomes.length === 1 && !kept.always.has(check.id)) {
    return stage(model, { paths, behind: behind + 1, made, passed: [...passed, first] }, kept)
  }
  return {
    kind: 'split',
    check: check.id,
    answers: outcomes.map((outcome) => ({
      outcome,
      next: stage(
        model,
        {
          paths: paths.filter(({ answered }) => numbered(answered, behind).outcome === outcome),
          behind: behind + 1,
          made: withTake(made, check, outcome),
          passed,
        },
        kept,
      ),
    })),
  }
}

function ending(model: Model, { paths, made, passed }: Stretch, { sureFrom }: Kept): Ending {
  const { end, evidence } = numbered(paths, 0)
  const chanceOf = chanceOfEnd(model, end)
  const goal = Math.min(sureFrom, chanceOf(belief(model, evidence)))
  const { sure, made: all } = makeSure(model, { made, passed, chanceOf, goal })
  const now = belief(model, all)
  return {
    kind: 'ending',
    end,
    explanations: paths.map(({ explanation }) => explanation),
    sure,
    before: chanceOf(belief(model, made)),
    after: chanceOf(now),
    suspects: suspects(model, now),
  }
}

/** Probability that the cause is among what a walk ended in; of a contradiction there is nothing to make sure: 1. */
function chanceOfEnd({ cutSets }: Model, end: Ending['end']) {
  const isMeant = ((): ((parts: readonly string[]) => boolean) => {
    switch (end.kind) {
      case 'named':
        return (parts) => parts.join() === end.parts.join()
      case 'cannotSeparate': {
        const group = new Set(end.group.map(({ part }) => part))
        return (parts) => (parts.length === 0 ? group.has(null) : parts.some((p) => group.has(p)))
      }
      case 'outsideThisTree':
        return (parts) => parts.length === 0
      case 'contradiction':
        return () => true
    }
  })()
  const meant = cutSets.map(({ parts }) => isMeant(parts))
  return (now: readonly number[]): number =>
    now.reduce((sum, p, c) => (meant[c] ? sum + p : sum), 0)
}
