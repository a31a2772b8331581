import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName, partNameOn } from '../../knowledge/machine-name.ts'
import { overTitle } from '../../knowledge/sheet/over-case.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, fold } from '../record/fold.ts'
import type { JobSummary } from '../record/summary.ts'
import { caseOf } from '../standing/find.ts'
import { readJob } from '../standing/standing.ts'
import type { ExportedHead } from './columns.ts'
import { type ExportedReading, exportedReadings, unjudgedReadings } from './readings.ts'

/** A job as data: what is known of it now, and all events that this follows from. */
export function exportedJob(knowledge: Knowledge, job: StoredJob, summary: JobSummary | null) {
  const folded = fold(job.events)
  const { opened, conditions, particulars, meter, repairs } = folded
  return {
    ...exportedHead(knowledge, job.id, folded, summary),
    ...opened.over,
    particulars,
    air: conditions.air,
    conditions,
    meter,
    repairs,
    readings: readingsOf(knowledge, job, folded),
    // As they were written: whoever reads these loses nothing.
    events: job.events.map(({ event, at }) => ({ at, ...event })),
  }
}

/** What is known of a job at first sight. */
export function exportedHead(
  { machines, complaints }: Knowledge,
  job: number,
  { opened, openedAt, note, particulars, repairs }: Folded,
  summary: JobSummary | null,
): ExportedHead {
  const { machine, complaint, over } = opened
  const { serial, hours, customer, technician } = particulars
  const { verdict } = summary ?? {}
  const last = repairs.at(-1)
  const sheet = machines.get(machine)
  return {
    job,
    openedAt: openedAt.toISOString(),
    machine,
    machineName: sheet === undefined ? '' : machineName(sheet),
    complaint,
    complaintTitle: over === undefined ? (complaints.get(complaint)?.title ?? '') : overTitle,
    note,
    serial: over?.serial ?? serial,
    hours,
    customer,
    technician: over?.by ?? technician,
    verdict: verdict ? verdictWords[verdict.kind] : '',
    blamed: together(summary?.over?.bad ?? verdict?.parts ?? []),
    repaired: together(
      repairs.flatMap(({ parts, cause }) => [
        ...parts.map((part) => partNameOn(sheet, part)),
        // Its own semicolons stand in the event.
        ...(cause === undefined ? [] : [cause.replaceAll(';', ',')]),
      ]),
    ),
    proved: last === undefined ? '' : (last.outcome ?? 'not proved'),
  }
}

const verdictWords = {
  ask: 'to check',
  named: 'named',
  cannotSeparate: 'cannot separate',
  contradiction: 'contradiction',
  outsideThisTree: 'outside this tree',
} as const satisfies Readonly<Record<NonNullable<JobSummary['verdict']>['kind'], string>>

/** A comma stands within names of parts now and then, a semicolon never. */
const together = (names: readonly string[]): string => names.join('; ')

/** The readings of a job, judged where its machine and its complaint are still among the trees. */
export function readingsOf(
  knowledge: Knowledge,
  job: StoredJob,
  folded: Folded,
): readonly ExportedReading[] {
  const kase = caseOf(knowledge, folded)
  return kase === null
    ? unjudgedReadings(job, folded.readings)
    : exportedReadings(readJob(knowledge, { job, folded, kase }))
}
