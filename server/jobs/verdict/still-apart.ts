import { asItStands, undone } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { putBackSentences } from '../words/put-back.ts'

/** How to put back what the checks left apart, off or fitted. */
export function stillApart({ job, kase }: Pick<Standing, 'job' | 'kase'>): string[] {
  return putBackSentences(undone(asItStands(kase, job).setups))
}
