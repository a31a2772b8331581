import { toPutBack } from './as-it-stands.ts'
import { putBackSentences } from './put-back.ts'
import type { Standing } from './standing.ts'

/** How to put back what the checks left apart, off or fitted. */
export function stillApart({ asItStands, kase }: Pick<Standing, 'asItStands' | 'kase'>): string[] {
  return putBackSentences(toPutBack(asItStands), kase.machine)
}
