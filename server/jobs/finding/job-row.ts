import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { JobLine } from '../record/events.ts'
import type { JobSummary } from '../record/summary.ts'
import {
  counted,
  dateAndTime,
  jobNumber,
  listed,
  lowerFirst,
  sentence,
} from '../words/sentences.ts'
import type { JobRow } from './views.ts'

/** One job as lists show it. */
export function jobRow(knowledge: Knowledge, line: JobLine): JobRow {
  const machine = knowledge.machines.get(line.machine)
  return {
    number: jobNumber(line.id),
    href: `/jobs/${line.id}`,
    machine: machine ? machineName(machine) : line.machine,
    model: machine?.name ?? line.machine,
    complaint: knowledge.complaints.get(line.complaint)?.title ?? line.complaint,
    note: line.note,
    changed: dateAndTime(line.changedAt),
    changedIso: line.changedAt.toISOString(),
    state: stateOf(line.summary),
    verdict: verdictOf(line),
  }
}

function stateOf(summary: JobSummary | null): JobRow['state'] {
  if (summary?.over?.left === 0) return 'Done'
  const { repair = null } = summary ?? {}
  if (repair === null || repair.outcome === 'still there') return 'Open'
  return repair.outcome === 'gone' ? 'Proved' : 'Repaired'
}

/** Where it stands, in one short sentence. */
function verdictOf({ summary, events }: JobLine): string {
  // The first entry is the opening itself.
  if (events === 1) return 'Just opened.'
  if (summary === null) return `${counted(events - 1, 'entry', 'entries')}.`
  const { repair, verdict, readings, over } = summary
  if (over !== undefined) return overWords(readings, over)
  if (repair?.outcome === 'gone') {
    return `Repaired: ${few(repair.parts, 'and')}. Proved ${dateAndTime(new Date(repair.at))}.`
  }
  if (repair?.outcome === null) return `Repaired: ${few(repair.parts, 'and')}. Not proved yet.`
  const before = repair === null ? '' : `Still there after ${few(repair.parts, 'and')}. `
  return before + (verdict === null ? readingWords(readings) : verdictWords(verdict, readings))
}

function overWords(readings: number, { left, open, bad }: NonNullable<JobSummary['over']>): string {
  const found = bad.length === 0 ? '' : ` Bad: ${few(bad, 'and')}.`
  if (left > 0) return `${counted(readings, 'reading')}, ${left} to make.${found}`
  const rest = open === 0 ? '' : ` ${counted(open, 'reading')} left open.`
  return `${found === '' && open === 0 ? 'All good.' : found}${rest}`.trim()
}

function verdictWords(
  { kind, parts }: NonNullable<JobSummary['verdict']>,
  readings: number,
): string {
  switch (kind) {
    case 'ask':
      return readingWords(readings)
    case 'named':
      return `Named: ${few(parts, 'and')}.`
    case 'cannotSeparate':
      return sentence(`Down to ${few(parts, 'or')}`)
    case 'contradiction':
      return 'The readings contradict each other.'
    case 'outsideThisTree':
      return 'The cause is none of those listed.'
  }
}

const readingWords = (count: number): string =>
  count === 0 ? 'No reading yet.' : `${counted(count, 'reading')}, no part named yet.`

/** The first few parts, in a sentence. */
function few(parts: readonly string[], last: 'and' | 'or'): string {
  const names = parts.map(lowerFirst)
  if (names.length <= mostNamed) return listed(names, last)
  return listed([...names.slice(0, mostNamed - 1), `${names.length - mostNamed + 1} others`], last)
}

const mostNamed = 3
