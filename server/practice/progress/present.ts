import { counted, minutes, upperFirst } from '../../jobs/words/sentences.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { progressHref } from '../page/hrefs.ts'
import type { RoundLine } from '../record/rounds.ts'
import { isCounted } from '../tool/result.ts'
import { nextOf, type Sum, sumsOf } from './sums.ts'

/** How somebody's rounds have gone. */
export interface ProgressPage {
  readonly title: string
  readonly who: string
  readonly says: string
  readonly rows: readonly {
    readonly kind: string
    readonly rounds: string
    readonly right: string
    readonly minutes: string
    readonly tool: string
  }[]
  readonly next: { readonly says: string; readonly href: string; readonly text: string }
  readonly people: readonly { readonly href: string; readonly text: string }[]
}

export function presentProgress(
  knowledge: Knowledge,
  who: string,
  rounds: readonly RoundLine[],
  people: readonly string[],
): ProgressPage {
  const over = rounds.flatMap(({ result }) => result ?? [])
  const results = over.filter(isCounted)
  const sums = sumsOf(results)
  const right = results.filter((result) => result.right).length
  return {
    title: 'Practice so far',
    who,
    says: [
      over.length === 0 ? 'No round is over yet.' : '',
      results.length > 0 ? `${counted(results.length, 'round')}, ${right} of them right.` : '',
      leftOut(over.length - results.length),
    ]
      .filter(Boolean)
      .join(' '),
    rows: sums.map((sum) => ({
      kind: kindWords(knowledge, sum),
      rounds: String(sum.rounds),
      right: String(sum.right),
      minutes: minutes(sum.minutes / sum.rounds),
      tool: minutes(sum.toolMinutes / sum.rounds),
    })),
    next: nextWords(knowledge, who, sums),
    people: people
      .filter((each) => each !== who)
      .map((each) => ({ href: progressHref(each), text: each })),
  }
}

/** Rounds that say nothing of who looked. */
const leftOut = (open: number): string =>
  open === 0
    ? ''
    : `${counted(open, 'round')} ${open === 1 ? 'is' : 'are'} not counted, where the tool did not find it either.`

const kindWords = ({ partKinds }: Knowledge, { partKind }: Sum): string =>
  upperFirst(partKinds.get(partKind)?.name ?? partKind)

function nextWords(knowledge: Knowledge, who: string, sums: readonly Sum[]): ProgressPage['next'] {
  const next = nextOf(sums)
  const complaint = knowledge.complaints.get(next?.missed[0] ?? '')
  const query = new URLSearchParams({ who, ...(complaint && { complaint: complaint.id }) })
  const text = complaint ? `Practise “${complaint.title}”` : 'Begin a round'
  if (next === undefined) {
    const says = sums.length === 0 ? 'Begin with any.' : 'All of it goes well: take a hard one.'
    const hard = new URLSearchParams({ who, level: sums.length === 0 ? 'any' : 'hard' })
    return { says, href: `/practice?${hard}`, text: 'Begin a round' }
  }
  const kind = kindWords(knowledge, next).toLowerCase()
  const says =
    next.right < next.rounds
      ? `Practise next: ${kind}. ${next.right} of ${next.rounds} right.`
      : `Practise next: ${kind}. It was found, but it took longer than it need.`
  return { says, href: `/practice?${query}`, text }
}
