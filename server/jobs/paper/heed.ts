import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { barringsOf } from '../standing/barred.ts'
import type { Standing } from '../standing/standing.ts'
import { apartByPhone, stillApart } from '../standing/still-apart.ts'
import { cautionsEverywhere, cautionsView } from '../words/cautions/cautions.ts'
import { sentence } from '../words/sentences.ts'
import type { HeedOnSheet } from './view.ts'

/** What the next person has to know: that it may not be used, what may not be done, and what is still apart. */
export function presentHeed(input: Standing): HeedOnSheet {
  const { kase, folded, knowledge } = input
  const byPhone = folded.conditions.who === 'owner'
  const isProved = folded.repairs.at(-1)?.outcome === 'gone'
  const ofComplaint = cautionCards(kase.complaint.cautions ?? [], knowledge, kase.machine)
  const cautions = [...cautionsEverywhere(input), ...(isProved ? [] : ofComplaint)]
  return {
    cautions: { ...cautionsView(cautions), inFull: [] },
    sentences: isProved
      ? []
      : [
          notToBeUsed,
          ...barringsOf(kase, folded).flatMap(({ engine, says }) => (engine ? sentence(says) : [])),
        ],
    apart: isProved ? [] : byPhone ? apartByPhone(input) : stillApart(input),
  }
}

const notToBeUsed =
  'Nobody rides, runs or lends this machine until it is repaired and the complaint is proved gone.'
