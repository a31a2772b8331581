import { named } from '../../diagnosis/model/named.ts'
import type { Misfit, Step } from '../../diagnosis/model/walk.ts'
import { canSlip } from '../measuring/judged.ts'
import type { Standing } from '../standing/standing.ts'
import { noCautions } from '../words/cautions/cautions.ts'
import type { NextStep } from '../words/next-step.ts'
import { upperFirst } from '../words/sentences.ts'
import { readSentence } from './evidence.ts'
import { couldStillBe } from './named.ts'
import type { VerdictView } from './view.ts'

type Contradiction = Extract<Step, { kind: 'contradiction' }>

/** "The readings do not fit any single explanation: repeat … first." */
export function contradiction(input: Standing, { misfits }: Contradiction): VerdictView {
  const [first] = misfits
  return {
    kind: 'contradiction',
    stamp: 'the readings disagree',
    says: `The readings do not fit any single explanation${first ? `: ${begin(input, first)}` : ''}.`,
    evidence: misfits
      .map((misfit) => `${readSentence(input, misfit.check)} ${surprising(misfit)}`)
      .slice(0, 3),
    cautions: noCautions,
    next: misfits.slice(0, 3).map((misfit) => makeAgain(input, misfit)),
    prove: [],
    couldBe: couldStillBe(input, []),
  }
}

/** How badly a reading fits the explanation that fits all of them best. */
function surprising({ bits }: Misfit): string {
  const times = 2 ** bits
  const often = times >= 1000 ? 'over 1000' : `about ${Number(times.toPrecision(2))}`
  return `That does not fit the rest: what one would expect is ${often} times likelier.`
}

function begin({ kase }: Standing, { check }: Misfit): string {
  const title = `“${upperFirst(named(kase.checks, check).title)}”`
  return canSlip(kase, check)
    ? `make one more take of ${title} first`
    : `look at ${title} again first`
}

/** A reading that can slip is made once more; an answer that cannot is only put right. */
export function makeAgain({ job, kase }: Standing, { check }: Pick<Misfit, 'check'>): NextStep {
  const title = `“${upperFirst(named(kase.checks, check).title)}”`
  const name = encodeURIComponent(check)
  return canSlip(kase, check)
    ? {
        says: `Make one more take of ${title}, with care; if it comes out as before, it counts for more.`,
        way: { href: `/jobs/${job.id}?take=${name}`, text: 'Make one more take' },
      }
    : {
        says: `Look at ${title} again: was it heard and set down right?`,
        way: { href: `/jobs/${job.id}?correct=${name}`, text: 'Put it right' },
      }
}
