import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { likeliest } from '../../diagnosis/belief/likeliest.ts'
import { column } from '../../diagnosis/model/chances.ts'
import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Standing } from '../standing/standing.ts'
import { readWords } from '../words/reading-words.ts'
import { lowerFirst } from '../words/sentences.ts'

/** Why a check that has a reading is asked for once more, with how often such a reading is a slip. */
export function whyFurtherTake({ kase, judged, walk }: Standing, card: CheckCard): string {
  const taken = named(judged, card.id)
  const { slips } = checkNamed(kase.model, card.id)
  const outcome = likeliest(taken.likelihoods)
  const shares = column(slips ?? [], outcome).filter((_, state) => state !== outcome)
  const share = Math.max(0, ...shares)
  const often = share > 0 ? `About 1 time in ${Math.round(1 / share)}` : 'Now and then'
  const proposed = walk.step.kind === 'ask' && walk.step.proposal.check === card.id
  const hangs = proposed ? ', and much hangs on that' : ''
  return (
    `It came back as “${lowerFirst(readWords(card, taken))}”${hangs}. ` +
    `${often} it comes out like that by a slip of contact or hand alone; what the part itself does, it does again.`
  )
}
