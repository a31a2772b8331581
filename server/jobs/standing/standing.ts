import { afterRepair } from '../../diagnosis/belief/after-repair.ts'
import { standing } from '../../diagnosis/model/asking.ts'
import type { Evidence } from '../../diagnosis/model/model.ts'
import type { Walk } from '../../diagnosis/model/walk.ts'
import { walk } from '../../diagnosis/walk.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { foreseenModel } from '../measuring/foreseen.ts'
import type { Judged } from '../measuring/judged.ts'
import { judgedReadings } from '../measuring/judged.ts'
import type { MeterAtHand } from '../measuring/meter-at-hand.ts'
import { meterAtHand } from '../measuring/meter-at-hand.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, repairedInVain } from '../record/fold.ts'
import { asItStands, standsOf } from './as-it-stands.ts'
import type { FoundJob } from './find.ts'
import { withRates } from './rates/with-rates.ts'
import { afterTrials } from './trials.ts'
import { walkOptions } from './walk-options.ts'
import { isOwnerThere, withOwnerAway } from './way/asking.ts'
import type { AsItStands } from './way/state.ts'

/** Where a job stands: all that its page is made from, but for what a request asks to see. */
export interface Standing {
  readonly job: StoredJob
  readonly folded: Folded
  readonly kase: Case
  readonly knowledge: Knowledge
  readonly meter: MeterAtHand
  /** Every reading with what it is worth. */
  readonly judged: ReadonlyMap<string, Judged>
  /** The readings as they were weighed, in the order they were taken. */
  readonly evidence: readonly Evidence[]
  /** The machine as the checks made so far left it. */
  readonly asItStands: AsItStands
  readonly walk: Walk
}

/** A job with its readings judged, and nobody suspected yet: all that its data tell, at a fraction of the work. */
export type ReadJob = Pick<Standing, 'job' | 'folded' | 'kase' | 'knowledge' | 'meter' | 'judged'>

/** The readings of a job, judged with its meter. */
export function readJob(knowledge: Knowledge, found: FoundJob): ReadJob {
  const { kase, folded } = found
  const meter = meterAtHand(knowledge, folded)
  const judged = judgedReadings(kase, folded, meter, knowledge.owner)
  return { ...found, knowledge, meter, judged }
}

/** Where a job stands: its readings judged with its meter, and the walk they make. */
export function standingOf(knowledge: Knowledge, found: FoundJob): Standing {
  const { folded } = found
  if (folded.opened.over !== undefined) return overStanding(knowledge, found)
  const meter = meterAtHand(knowledge, folded)
  const { conditions } = folded
  const foreseen = foreseenModel(found.kase, meter, conditions, knowledge.owner)
  const seen = withOwnerAway(foreseen, found.kase, conditions, knowledge.owner)
  const whole = withRates(knowledge, found, seen)
  const repaired = afterRepair(whole, repairedInVain(folded))
  const model = afterTrials(repaired, found.kase, folded, knowledge)
  const kase = { ...found.kase, model }
  const judged = judgedReadings(kase, folded, meter, knowledge.owner)
  const options = walkOptions(kase, folded, judged, { meter, owner: knowledge.owner })
  const stands = asItStands(kase, found.job)
  return {
    ...found,
    kase,
    knowledge,
    meter,
    judged,
    evidence: options.evidence,
    asItStands: stands,
    walk: walk(model, {
      ...options,
      stands: standing(standsOf(stands), isOwnerThere(kase, found.job)),
    }),
  }
}

/** A check-over asks for all there is, and nobody has to be suspected. */
const noWalk: Walk = {
  step: { kind: 'cannotSeparate', group: [] },
  belief: [],
  suspects: [],
  branches: new Map(),
  proposals: [],
  stopping: 0,
}

function overStanding(knowledge: Knowledge, found: FoundJob): Standing {
  return {
    ...readJob(knowledge, found),
    evidence: [],
    asItStands: asItStands(found.kase, found.job),
    walk: noWalk,
  }
}
