import { gainedBy } from '../../diagnosis/verdict/gained.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import type { Standing } from '../standing/standing.ts'
import { branchClause, clearedByCheck } from '../words/branch-words.ts'
import { readInWords, verdictWord } from '../words/reading-words.ts'
import { clauses, percent, sentence, upperFirst } from '../words/sentences.ts'
import type { LastReading } from './view.ts'

/** What came back last and what it meant, for the top of the page; nothing before the first reading. */
export function presentLast(input: Standing): LastReading | undefined {
  const { job, kase, judged } = input
  const check = lastCheck(input)
  const taken = check === undefined ? undefined : judged.get(check)
  const card = check === undefined ? undefined : kase.checks.get(check)
  if (check === undefined || taken === undefined || card === undefined) return undefined
  const address = `/jobs/${job.id}?`
  return {
    says: sentence(readInWords(kase, card, taken)),
    word: verdictWord(card, taken),
    means: meaning(input, check),
    correctHref: `${address}correct=${encodeURIComponent(check)}`,
    ...(card.measurand &&
      taken.measured?.decision !== 'conforms' &&
      allowsFurtherTake(kase, check) && {
        again: {
          href: `${address}take=${encodeURIComponent(check)}`,
          text: card.measurand.quantity.touches.another,
        },
      }),
  }
}

/** The check that was read, corrected or made once more last, if its reading still stands. */
function lastCheck({ job, folded }: Standing): string | undefined {
  const last = job.events.findLast(
    ({ event }) => 'touches' in event && folded.readings.has(event.check),
  )
  return last && 'check' in last.event ? last.event.check : undefined
}

/** What it took off the list, or else where it moved the suspicion. */
function meaning(input: Standing, check: string): string {
  const { kase, evidence, walk } = input
  const cleared = clearedByCheck(kase, walk).get(check) ?? []
  if (cleared.length > 0) return `Rules out: ${clauses(cleared, 1)}.`
  const moved = kase.checks.has(check) ? gainedBy(kase.model, evidence, check) : null
  if (moved === null) return 'That changes little.'
  const { name, before, now } = moved
  return `${upperFirst(branchClause(kase, name))}: ${percent(before)} before, ${percent(now)} now.`
}
