import { named } from '../../diagnosis/model/named.ts'
import type { Proposal } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { hindrance } from '../words/hindrance.ts'
import { minutes, sentence, upperFirst } from '../words/sentences.ts'
import type { OtherCheck, OthersView } from './view.ts'

const bestCount = 5

/** Checks one could take instead of the one on the page, and those one cannot, with the reason. */
export function presentOthers(input: Standing, onPage: string | undefined): OthersView {
  const { folded, kase, walk } = input
  const possible = walk.proposals
    .filter(({ check }) => check !== onPage)
    .map((proposal) => proposed(input, proposal))
  return {
    best: possible.slice(0, bestCount),
    more: possible.slice(bestCount),
    skipped: [...folded.skipped]
      .filter(([check]) => kase.checks.has(check) && !folded.readings.has(check))
      .map(([check, reason]) => other(input, check, sentence(reason))),
    impossible: [...kase.checks.values()]
      .filter(({ id }) => !folded.readings.has(id) && !folded.skipped.has(id))
      .flatMap((card) => {
        const reason = hindrance(card, folded.opened.conditions)
        return reason === null ? [] : [other(input, card.id, reason)]
      }),
  }
}

function proposed(input: Standing, proposal: Proposal): OtherCheck {
  if (!proposal.furtherTake) return other(input, proposal.check, worth(proposal))
  const { job, kase } = input
  return {
    title: upperFirst(named(kase.checks, proposal.check).title),
    href: `/jobs/${job.id}?take=${encodeURIComponent(proposal.check)}`,
    says: `One more take: ${worth(proposal)}`,
  }
}

function other({ job, kase }: Standing, check: string, says: string): OtherCheck {
  const href = `/jobs/${job.id}?check=${encodeURIComponent(check)}`
  return { title: upperFirst(named(kase.checks, check).title), href, says }
}

/** How much a check is expected to tell, in bits, from the most down; below the last, nothing new. */
const worths = [
  { from: 0.5, says: 'tells a lot' },
  { from: 0.1, says: 'tells something' },
  { from: 0.01, says: 'tells a little' },
]

function worth(proposal: Proposal): string {
  const tells = worths.find(({ from }) => proposal.bits >= from)?.says ?? 'tells nothing new'
  return `${minutes(proposal.minutes)}, ${tells}.`
}
