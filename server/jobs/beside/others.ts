import { named } from '../../diagnosis/model/named.ts'
import type { Proposal } from '../../diagnosis/model/walk.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Asked } from '../standing/asked.ts'
import { barredBy, barringsOf } from '../standing/barred.ts'
import type { Standing } from '../standing/standing.ts'
import { hindrance } from '../words/hindrance.ts'
import { counted, minutes, sentence, upperFirst } from '../words/sentences.ts'
import type { OtherCheck, OthersView } from './view.ts'

const bestCount = 5
/** Below this many bits a check tells nothing new. */
const worthBits = 0.01

/** Checks one could take instead of the one on the page, and those one cannot, with the reason. */
export function presentOthers(input: Standing & Asked, onPage: string | undefined): OthersView {
  const { folded, kase, walk, find = '' } = input
  const barrings = barringsOf(kase, folded)
  const fits = (check: string) => says(input, named(kase.checks, check), find)
  const possible = walk.proposals.filter(({ check }) => check !== onPage && fits(check))
  return {
    find: { action: `/jobs/${input.job.id}`, words: find, said: foundWords(find, possible.length) },
    best: possible
      .filter(({ bits }) => bits >= worthBits)
      .slice(0, bestCount)
      .map((proposal) => proposed(input, proposal)),
    groups: grouped(input, possible),
    skipped: [...folded.skipped]
      .filter(([check]) => kase.checks.has(check) && !folded.readings.has(check) && fits(check))
      .map(([check, reason]) => other(input, check, sentence(reason))),
    impossible: [...kase.checks.values()]
      .filter(({ id }) => !folded.readings.has(id) && !folded.skipped.has(id) && fits(id))
      .flatMap((card) => {
        const reason =
          hindrance(card, folded.conditions, input.knowledge.owner) ?? barredBy(barrings, card)
        return reason === null ? [] : [other(input, card.id, reason)]
      }),
  }
}

/** By the part they are about, as the tree has the parts; then what is asked, then what is about no one part. */
function grouped(input: Standing, possible: readonly Proposal[]): OthersView['groups'] {
  const groups = new Map<string, OtherCheck[]>(
    [...input.kase.parts.values()].map(({ name }) => [upperFirst(name), []]),
  )
  for (const proposal of possible) {
    const name = groupOf(input, named(input.kase.checks, proposal.check))
    groups.set(name, [...(groups.get(name) ?? []), proposed(input, proposal)])
  }
  return [...groups]
    .filter(([, checks]) => checks.length > 0)
    .map(([name, checks]) => ({ name, checks }))
}

function groupOf({ kase }: Standing, { part, asked }: CheckCard): string {
  const about = part === undefined ? undefined : kase.parts.get(part)
  if (about !== undefined) return upperFirst(about.name)
  return asked ? 'Asking the owner' : 'Several parts at once'
}

/** Whether each of these words is in the title of a check, or in the name of what it is about. */
function says(input: Standing, card: CheckCard, words: string): boolean {
  const text = `${card.title} ${groupOf(input, card)} ${card.spot?.says ?? ''}`.toLowerCase()
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}

function foundWords(find: string, count: number): string {
  if (find === '') return ''
  return count === 0
    ? `No check that can be made now is about “${find}”. Try fewer words.`
    : `${counted(count, 'check')} about “${find}”.`
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

/** How much a check is expected to tell, in bits, from the most down. */
const worths = [
  { from: 0.5, says: 'tells a lot' },
  { from: 0.1, says: 'tells something' },
  { from: worthBits, says: 'tells a little' },
]

function worth(proposal: Proposal): string {
  const tells = worths.find(({ from }) => proposal.bits >= from)?.says ?? 'tells nothing new'
  return `${minutes(proposal.minutes)}, ${tells}.`
}
