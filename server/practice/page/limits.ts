import { temperatureOf, usualWarmth } from '../../jobs/measuring/warmth.ts'
import { limitsNow, limitsWords } from '../../jobs/words/limits-now.ts'
import { degrees } from '../../jobs/words/sentences.ts'
import type { Measurand } from '../../knowledge/case.ts'
import { conditionsOf } from '../round/as-job.ts'
import type { Hidden } from '../seen/hidden.ts'

/** What a good part reads, and what the meter shows of it here where that is not the same. */
export interface LimitsView {
  /** "reads": what a good one does. */
  readonly verb: string
  readonly says: string
  readonly now?: string
}

/** The limits that apply on this machine as it stands at the bench. */
export function limitsOf(hidden: Hidden, measurand: Measurand): LimitsView {
  const conditions = conditionsOf(hidden)
  const { celsius } = temperatureOf(usualWarmth(conditions, measurand), conditions)
  const now = limitsNow(measurand, celsius)
  return {
    verb: measurand.quantity.goodOne,
    says: limitsWords(measurand),
    ...(now !== undefined && { now: `${now} at ${degrees(celsius)}` }),
  }
}
