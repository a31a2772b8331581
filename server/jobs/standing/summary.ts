import type { Step } from '../../diagnosis/model/walk.ts'
import type { Case } from '../../knowledge/case.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { JobSummaryRecord } from '../../store/jobs/summary.ts'
import { plainText } from '../../web/typed/spelling.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import type { Repair } from '../record/repairs.ts'
import type { JobSummary } from '../record/summary.ts'
import { asWritten } from '../words/names.ts'
import { caseOf } from './find.ts'
import { keptStanding } from './kept.ts'
import { type OverRow, overRows } from './over-rows.ts'
import { confirmedBy } from './rates/confirmed.ts'
import type { Standing } from './standing.ts'

/** What lists show of a job and find it by. The page that follows needs the same standing, so it is kept. */
export function summaryOf(parts: JobParts, job: StoredJob): JobSummaryRecord {
  const { knowledge } = parts
  const folded = fold(job.events)
  const kase = caseOf(knowledge, folded)
  const isOver = folded.opened.over !== undefined
  const shown: JobSummary = {
    readings: folded.readings.size,
    verdict:
      kase === null || job.version === 1 || isOver ? null : verdictOf(parts, { job, folded, kase }),
    repair: lastRepair(folded, kase),
    ...(isOver && kase && { over: overSummary(keptStanding(parts, { job, folded, kase })) }),
  }
  const { machine, complaint } = folded.opened
  const sheet = knowledge.machines.get(machine)
  const named = [...(shown.verdict?.parts ?? []), ...repaired(folded, kase)]
  return {
    shown,
    confirmed: confirmedBy(parts, job, folded, kase),
    closed: shown.repair?.outcome === 'gone' || shown.over?.left === 0,
    words: {
      machine: plainText(sheet ? machineName(sheet) : machine),
      complaint: plainText(knowledge.complaints.get(complaint)?.title ?? complaint),
      part: plainText(named.join(' ')),
      note: plainText(folded.note),
    },
  }
}

function verdictOf(
  parts: JobParts,
  found: { job: StoredJob; folded: Folded; kase: Case },
): JobSummary['verdict'] {
  const { step } = keptStanding(parts, found).walk
  return { kind: step.kind, parts: namesOf(found.kase, partsIn(step)) }
}

/** How far a check-over is, and what it has come to by then. */
function overSummary(standing: Standing): NonNullable<JobSummary['over']> {
  const rows = overRows(standing)
  const count = (...states: readonly OverRow['state'][]) =>
    rows.filter(({ state }) => states.includes(state)).length
  const bad = rows.flatMap(({ state, card }) => (state === 'bad' ? (card.part ?? []) : []))
  return {
    left: count('to read'),
    open: count('left out', 'unsure'),
    bad: namesOf(standing.kase, [...new Set(bad)]),
  }
}

/** The parts that a step is about: those it names, or cannot tell apart. */
function partsIn(step: Step): readonly string[] {
  if (step.kind === 'named') return step.parts
  return step.kind === 'cannotSeparate' ? step.group.flatMap(({ part }) => part ?? []) : []
}

function lastRepair({ repairs }: Folded, kase: Case | null) {
  const last = repairs.at(-1)
  if (last === undefined) return null
  const { outcome, at, provedAt = at } = last
  return { parts: repairedBy(last, kase), outcome, at: provedAt.toISOString() }
}

const repaired = ({ repairs }: Folded, kase: Case | null): string[] =>
  repairs.flatMap((repair) => repairedBy(repair, kase))

/** Whoever looks for a part finds what was no part of the tree by its own words. */
const repairedBy = ({ parts, cause }: Repair, kase: Case | null): string[] =>
  cause === undefined ? namesOf(kase, parts) : [asWritten(cause)]

const namesOf = (kase: Case | null, parts: readonly string[]): string[] =>
  parts.map((part) => kase?.parts.get(part)?.name ?? part)
