import { toPutBack } from '../standing/as-it-stands.ts'
import { putBackSentences } from '../standing/put-back.ts'
import type { Standing } from '../standing/standing.ts'

/** How to put back what the checks left apart, off or fitted. */
export function stillApart({ asItStands, kase }: Pick<Standing, 'asItStands' | 'kase'>): string[] {
  return putBackSentences(toPutBack(asItStands), kase.machine)
}
