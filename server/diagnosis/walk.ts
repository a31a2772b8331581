import { beliefs, checkNamed } from './belief/belief.ts'
import { branches } from './belief/branches.ts'
import { asReadElsewhere } from './belief/elsewhere.ts'
import { suspects } from './belief/suspects.ts'
import { furtherTake } from './belief/takes.ts'
import type { Check, Model } from './model/model.ts'
import { numbered } from './model/named.ts'
import { together } from './model/stands.ts'
import type { Walk, WalkOptions } from './model/walk.ts'
import { plan } from './plan/plan.ts'
import { decide } from './verdict/verdict.ts'

/**
 * Where a job stands: folds all readings from the first one and returns belief, branches, ranked
 * checks and the step to take. Nothing is remembered between calls, so undo, correction and replay
 * are the same thing.
 */
export function walk(model: Model, options: WalkOptions): Walk {
  const history = beliefs(model, options.evidence)
  const now = numbered(history, options.evidence.length)
  const checks = options.evidence.map((item) => item.check)
  const answered = new Set(checks)
  const ahead = plan(
    model,
    now,
    (check) => !answered.has(check.id) && !options.impossible.has(check.id),
    options.stands ?? together,
    { asTheyAre: [...furtherTakes(model, options), ...elsewhere(model, options)] },
  )
  return {
    step: decide(model, now, options, ahead),
    belief: now,
    suspects: suspects(model, now),
    branches: branches(model, history, checks),
    proposals: ahead.proposals,
    stopping: ahead.stopping,
  }
}

/** Checks not made yet whose like was: what all share has been seen. */
function elsewhere(model: Model, { evidence, impossible }: WalkOptions): Check[] {
  return asReadElsewhere(model, evidence).filter(({ id }) => !impossible.has(id))
}

/** Checks made already that a slip may have spoilt, to be made once more. */
function furtherTakes(model: Model, { evidence, impossible }: WalkOptions): Check[] {
  return evidence
    .filter(({ check }) => !impossible.has(check))
    .flatMap((item) => furtherTake(checkNamed(model, item.check), item) ?? [])
}
