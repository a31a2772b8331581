import { afterTrial, type Trial } from '../../diagnosis/belief/after-trial.ts'
import type { Model } from '../../diagnosis/model/model.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Folded } from '../record/fold.ts'

/** The model after all that an owner put right in vain, and tried to get home. */
export function afterTrials(model: Model, kase: Case, folded: Folded, knowledge: Knowledge): Model {
  const { astray } = knowledge.owner.answers
  return [
    ...putRightInVain(kase, folded.curedInVain),
    ...waysTried(kase, folded, knowledge),
  ].reduce((before, trial) => afterTrial(before, trial, astray), model)
}

/** One for each chance that it would have helped: a switch that is worked hard may stay shorted inside. */
function putRightInVain({ faults }: Case, curedInVain: readonly string[]): Trial[] {
  const worksFor = (fault: string) => faults.get(fault)?.mend?.works ?? 1
  return [...new Set(curedInVain.map(worksFor))].map((works) => ({
    faults: curedInVain.filter((fault) => worksFor(fault) === works),
    works,
    helped: false,
  }))
}

function waysTried({ ways, faults: all }: Case, { tried }: Folded, { home }: Knowledge): Trial[] {
  return [...tried].flatMap(([id, came]): Trial[] => {
    const works = home.ways[id]?.works
    const faults = ways.get(id) ?? []
    // What ran for a while speaks for neither, nor does what was left half done, nor what helps whatever the cause is.
    return works === undefined ||
      came === 'stopped' ||
      came === 'broken off' ||
      faults.length === all.size
      ? []
      : [{ faults, works, helped: came === 'helped' }]
  })
}
