import { numbered } from '../../../diagnosis/model/named.ts'
import type { Case } from '../../../knowledge/case.ts'
import { type Cause, causesOf } from '../../../knowledge/rates/causes.ts'
import type { CountedCause } from '../../../knowledge/rates/present.ts'
import type { ConfirmedRecord } from '../../../store/jobs/confirmed.ts'
import type { ConfirmedBody } from '../../record/confirmed.ts'
import type { StoredJob } from '../../record/events.ts'
import { type Folded, fold } from '../../record/fold.ts'
import type { JobParts } from '../../record/parts.ts'
import type { Repair } from '../../record/repairs.ts'
import type { FoundJob } from '../find.ts'
import { keptStanding } from '../kept.ts'
import type { Standing } from '../standing.ts'

/**
 * What a job has confirmed: the last repair, if the complaint was gone after it. Null where no repair is
 * proved, or no longer; undefined where there is none, or nobody complained.
 */
export function confirmedBy(
  parts: JobParts,
  job: StoredJob,
  folded: Folded,
  kase: Case | null,
): ConfirmedRecord | null | undefined {
  const last = folded.repairs.at(-1)
  const isTold = job.events.some(({ event }) => event.kind === 'repaired')
  if (!isTold || kase === null || folded.opened.over !== undefined) return undefined
  if (last?.outcome !== 'gone') return null
  const found = { job, folded, kase }
  const body: ConfirmedBody = {
    machine: kase.machine.id,
    complaint: kase.complaint.id,
    parts: [...last.parts],
    ...(last.cause !== undefined && { cause: last.cause }),
    causes: causesIn(keptStanding(parts, found), last),
    said: saidBefore(parts, found),
    leftOut: leftOutOf(job),
  }
  return { at: last.provedAt ?? last.at, body }
}

/** What had failed in the repaired parts: as somebody said, or each way of it by its chance on this job. */
function causesIn(standing: Standing, { parts, fault }: Repair): CountedCause[] {
  const causes = causesOf(standing.knowledge, standing.kase.machine)
  return parts.flatMap((part) => {
    const ways = causes.filter((cause) => cause.parts.some(({ id }) => id === part))
    const said = ways.find(({ mode }) => `${part}.${mode}` === fault)
    return said ? [counted(said, 1)] : divided(standing, part, ways)
  })
}

/** By belief; by the tables where the readings give the part no chance, or the tree does not hold it. */
function divided({ kase, walk }: Standing, part: string, ways: readonly Cause[]): CountedCause[] {
  const believed = ways.map(({ mode }) => {
    const fault = `${part}.${mode}`
    return kase.model.cutSets.reduce(
      (sum, { faults }, c) => sum + (faults.includes(fault) ? numbered(walk.belief, c) : 0),
      0,
    )
  })
  const isBelieved = believed.some((chance) => chance > 0)
  const weights = isBelieved ? believed : ways.map(({ rate }) => rate)
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  return ways
    .map((way, i) => counted(way, numbered(weights, i) / all))
    .filter(({ count }) => count >= leastCount)
}

/** Less than this of a count moves no rate that is printed. */
const leastCount = 0.001

const counted = ({ kind, role, mode }: Cause, count: number): CountedCause => ({
  ...{ kind, role, mode },
  count: Math.min(1, count),
})

/** What the tool held likeliest before anything was repaired. */
function saidBefore(parts: JobParts, { job, kase }: FoundJob): ConfirmedBody['said'] {
  const first = job.events.findIndex(({ event }) => event.kind === 'repaired')
  const events = job.events.slice(0, first)
  const then = { ...job, version: first, events }
  const { walk } = keptStanding(parts, { job: then, folded: fold(events), kase })
  if (walk.step.kind === 'named') {
    return { parts: [...walk.step.parts], chance: walk.step.probability, named: true }
  }
  if (walk.step.kind === 'outsideThisTree') {
    return { parts: [], chance: walk.step.probability, named: false }
  }
  const likeliest = walk.suspects.find(({ part }) => part !== null)
  return likeliest?.part
    ? { parts: [likeliest.part], chance: likeliest.probability, named: false }
    : null
}

/** Why the job is left out of the counts; null where it is not. */
function leftOutOf({ events }: StoredJob): string | null {
  const last = events.findLast(({ event }) => event.kind === 'counting')?.event
  return last?.kind === 'counting' && !last.counts ? last.reason : null
}
