import { afterRepair } from '../../diagnosis/belief/after-repair.ts'
import { belief } from '../../diagnosis/belief/belief.ts'
import { suspects } from '../../diagnosis/belief/suspects.ts'
import type { Evidence } from '../../diagnosis/model/model.ts'
import type { Suspect } from '../../diagnosis/model/walk.ts'
import { judgedReadings } from '../../jobs/measuring/judged.ts'
import { meterAtHand } from '../../jobs/measuring/meter-at-hand.ts'
import { fold } from '../../jobs/record/fold.ts'
import { walkOptions } from '../../jobs/standing/walk-options.ts'
import type { Hidden } from '../seen/hidden.ts'
import { asJob, type Reading } from './as-job.ts'

/** What is known after these readings, by the same belief as on a job. */
export interface Known {
  readonly evidence: readonly Evidence[]
  /** Probability of each cut set, in the model's order. */
  readonly belief: readonly number[]
  /** Parts by falling probability. */
  readonly suspects: readonly Suspect[]
}

/** @param renewed parts that are new meanwhile, with the complaint still there */
export function knownAfter(
  hidden: Hidden,
  readings: readonly Reading[],
  renewed: readonly string[] = [],
): Known {
  const { kase, knowledge } = hidden
  const folded = fold(asJob(hidden, readings).events)
  const meter = meterAtHand(knowledge, folded)
  const judged = judgedReadings(kase, folded, meter, knowledge.owner)
  const { evidence } = walkOptions(kase, folded, judged, { meter, owner: knowledge.owner })
  const model = afterRepair(kase.model, renewed)
  const now = belief(model, evidence)
  return { evidence, belief: now, suspects: suspects(model, now) }
}
