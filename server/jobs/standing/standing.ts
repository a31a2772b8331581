import { afterRepair } from '../../diagnosis/belief/after-repair.ts'
import { walk } from '../../diagnosis/walk.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { foreseenModel } from '../measuring/foreseen.ts'
import { judgedReadings } from '../measuring/judged.ts'
import { instrumentOf } from '../measuring/meter-at-hand.ts'
import type { JobInput } from '../page/present.ts'
import type { FoundJob } from './find.ts'
import { walkOptions } from './walk-options.ts'

/** Where a job stands: its readings judged with its meter, and the walk they make. */
export function standingOf(knowledge: Knowledge, found: FoundJob): JobInput {
  const { folded } = found
  const instrument = instrumentOf(knowledge, folded)
  const cured = folded.repairs.flatMap(({ parts, outcome }) =>
    outcome === 'still there' ? parts : [],
  )
  const whole = foreseenModel(found.kase, instrument, folded.opened.conditions)
  const model = afterRepair(whole, cured)
  const kase = { ...found.kase, model }
  const judged = judgedReadings(kase, folded, instrument)
  const options = walkOptions(kase, folded, judged, instrument)
  return {
    ...found,
    kase,
    knowledge,
    instrument,
    judged,
    evidence: options.evidence,
    walk: walk(model, options),
  }
}
