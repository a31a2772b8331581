import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { overTitle } from '../../knowledge/sheet/over-case.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, fold } from '../record/fold.ts'
import { caseOf } from '../standing/find.ts'
import { readJob } from '../standing/standing.ts'
import type { ExportedHead } from './columns.ts'
import { type ExportedReading, exportedReadings, unjudgedReadings } from './readings.ts'

/** A job as data: what is known of it now, and all events that this follows from. */
export function exportedJob(knowledge: Knowledge, job: StoredJob) {
  const folded = fold(job.events)
  const { opened, conditions, particulars, meter, repairs } = folded
  return {
    ...exportedHead(knowledge, job.id, folded),
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
  { opened, openedAt, note }: Folded,
): ExportedHead {
  const { machine, complaint, over } = opened
  const sheet = machines.get(machine)
  return {
    job,
    openedAt: openedAt.toISOString(),
    machine,
    machineName: sheet === undefined ? '' : machineName(sheet),
    complaint,
    complaintTitle: over === undefined ? (complaints.get(complaint)?.title ?? '') : overTitle,
    note,
  }
}

/** The readings of a job, judged where its machine and its complaint are still among the trees. */
export function readingsOf(
  knowledge: Knowledge,
  job: StoredJob,
  folded: Folded,
): readonly ExportedReading[] {
  const kase = caseOf(knowledge, folded)
  return kase === null
    ? unjudgedReadings(folded.readings)
    : exportedReadings(readJob(knowledge, { job, folded, kase }))
}
