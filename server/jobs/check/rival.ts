import { named } from '../../diagnosis/model/named.ts'
import type { Proposal } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { minutes, upperFirst } from '../words/sentences.ts'

/** Two checks tell about as much where neither tells a tenth more than the other. */
const alike = 1.1

/**
 * Why the proposed check and not the runner-up, in one or two sentences from the same figures that
 * decided; empty where there is no runner-up.
 */
export function presentRival(
  { kase, walk }: Pick<Standing, 'kase' | 'walk'>,
  check: string,
): string {
  const [best, rival] = walk.proposals
  if (best?.check !== check || rival === undefined || rival.bits <= 0) return ''
  const title = upperFirst(named(kase.checks, rival.check).title)
  const more = rival.furtherTake ? ' once more' : ''
  return `The runner-up, “${title}”${more}, ${difference(best, rival)}.${toTheEnd(best, rival)}`
}

function difference(best: Proposal, rival: Proposal): string {
  const same = minutes(rival.minutes) === minutes(best.minutes)
  const cost = same ? 'the same time' : `${minutes(rival.minutes)} against ${minutes(best.minutes)}`
  const dearer = rival.minutes > best.minutes
  if (rival.bits > best.bits * alike) {
    return dearer
      ? `would tell more, but takes ${cost}`
      : 'would tell more now, but leads on less well'
  }
  if (rival.bits * alike < best.bits) {
    return dearer ? `tells less and takes ${cost}` : `tells less in ${cost}`
  }
  return dearer ? `tells about as much and takes ${cost}` : `tells about as much in ${cost}`
}

const risk = 'In both, the risk of buying a wrong part counts as time lost.'

/** Expected minutes to the end by either, where both were followed that far. */
function toTheEnd(best: Proposal, rival: Proposal): string {
  const [first, second] = [best.expectedMinutes, rival.expectedMinutes]
  if (first === undefined || second === undefined) return ''
  const [a, b] = [Math.round(first), Math.round(second)]
  if (a === b) return ` Finding the fault takes about ${minutes(a)} either way. ${risk}`
  if (b < a) {
    return ` Finding the fault takes about as long either way, ${minutes(b)} and ${minutes(a)}: then what is less work for you comes first. ${risk}`
  }
  return ` Finding the fault takes about ${minutes(b)} that way, and ${minutes(a)} this way. ${risk}`
}
