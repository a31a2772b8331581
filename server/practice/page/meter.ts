import { unfitSentence } from '../../jobs/check/meter.ts'
import { fitnessFor } from '../../jobs/measuring/foreseen.ts'
import { meterAtHand } from '../../jobs/measuring/meter-at-hand.ts'
import { fold } from '../../jobs/record/fold.ts'
import { sentence } from '../../jobs/words/sentences.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Fitness, Way } from '../../measure/foresee/fitness.ts'
import { asJob } from '../round/as-job.ts'
import type { RoundStanding } from '../round/standing.ts'

/** What the meter at hand is worth for one check, sentences; undefined where it is fit, or nothing is measured. */
export interface OfMeter {
  /** What it cannot tell, also where it can tell much. */
  readonly unfit: string | undefined
  /** That no reading of it can prove the part good, and why. */
  readonly cannot: string | undefined
}

export function meterFor({ hidden, knowledge }: RoundStanding): (card: CheckCard) => OfMeter {
  const folded = fold(asJob(hidden, []).events)
  const { conditions } = folded
  const meter = meterAtHand(knowledge, folded)
  return ({ measurand }) => {
    if (measurand === undefined) return { unfit: undefined, cannot: undefined }
    const fit = fitnessFor(measurand, meter, conditions)
    return { unfit: unfitSentence(fit, measurand), cannot: cannotWords(fit) }
  }
}

function cannotWords(fit: Fitness | null): string | undefined {
  if (fit === null) return 'The meter cannot judge it: it has no range for that.'
  if (fit.kind !== 'unfit') return undefined
  const why = [...reasons].find(([way]) => fit.ways.includes(way))?.[1] ?? 'its error is too large'
  return sentence(`The meter cannot prove it good: ${why} against these limits`)
}

/** Why it does not judge, by what would make it: the weightiest first. */
const reasons: ReadonlyMap<Way, string> = new Map([
  ['active adaptor', 'what the diode of a passive peak adaptor takes off is too much'],
  ['finer meter', 'its error and its last digit are too coarse'],
  ['four-wire', 'leads and touches put too much in'],
  ['zero the leads', 'its leads put too much in'],
  ['measure the temperature', 'how warm the part is counts too much'],
  ['measure the speed', 'how fast it turns counts too much'],
])
