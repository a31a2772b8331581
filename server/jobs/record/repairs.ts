import {
  asides,
  type Conditions,
  type JobEvent,
  type PutRight,
  type Repaired,
  type StoredJob,
  type Tried,
} from './events.ts'

type Proved = Extract<JobEvent, { kind: 'proved' }>

export interface Repair extends Repaired {
  readonly outcome: null | 'gone' | 'still there'
  /** When it was written down, and when it was proved. */
  readonly at: Date
  readonly provedAt?: Date
  /** An owner did it, told how by phone. */
  readonly byPhone: boolean
  /** What was read while it was proved, as it was typed. */
  readonly read?: string
}

/** A repair as it is written down: nobody has tried yet whether it helped. */
export function repairOf(
  { kind: _, ...repaired }: { kind: string } & Repaired,
  at: Date,
  { who }: Pick<Conditions, 'who'>,
): Repair {
  return { ...repaired, outcome: null, at, byPhone: who === 'owner' }
}

/** Whether a repair stands, and so can be taken back; one in vain has opened its checks again, and stays in the record. */
export const stands = (last: Repair | undefined): last is Repair =>
  last !== undefined && last.outcome !== 'still there'

/** What was said of the last repair does not stand: it waits for its proof again. */
export function unproveLast(repairs: Repair[]): void {
  const last = repairs.pop()
  if (last === undefined) return
  const { provedAt: _, read: __, ...repair } = last
  repairs.push({ ...repair, outcome: null })
}

/** What was written down last that is more than an aside. */
export const lastSaid = ({ events }: StoredJob): JobEvent | undefined =>
  events.findLast(({ event }) => !asides.includes(event.kind))?.event

/** Whether it was said last of all that the last repair did not help, so that this can be taken back. */
export function canBeUnproved(job: StoredJob): boolean {
  const last = lastSaid(job)
  return last?.kind === 'proved' && !last.gone
}

/** The way home that was said last of all to be tried, whatever came of it: that can be taken back. */
export function canBeUntried(job: StoredJob): Extract<JobEvent, { kind: 'tried' }> | undefined {
  const last = lastSaid(job)
  return last?.kind === 'tried' && !last.takenBack ? last : undefined
}

/** The complaint was tried again: what came of the last repair. */
export function proveLast(repairs: Repair[], { gone, read }: Proved, provedAt: Date): void {
  const last = repairs.pop()
  if (last !== undefined) {
    const outcome = gone ? 'gone' : 'still there'
    repairs.push({ ...last, outcome, provedAt, ...(read !== undefined && { read }) })
  }
}

type PutRightEvent = Extract<JobEvent, { kind: 'put right' }>
type TriedEvent = Extract<JobEvent, { kind: 'tried' }>

/** What an owner tried and put right by phone, as one event after the other says it. */
export interface OwnersTries {
  /** By the name of the way home, what came of it the last time. */
  readonly tried: Map<string, Tried>
  /** By the check that told of it, or the part. */
  readonly putRight: ReadonlyMap<string, PutRight>
  readonly setTried: (event: TriedEvent) => void
  readonly setPutRight: (event: PutRightEvent) => void
  /** Failures that were put right, whatever came of it, and those of them while the complaint stayed. */
  readonly cures: () => {
    readonly cured: readonly string[]
    readonly curedInVain: readonly string[]
  }
}

export function ownersTries(): OwnersTries {
  const tried = new Map<string, Tried>()
  const putRight = new Map<string, PutRight>()
  // As it stood before what was said last, which can be taken back.
  const triedBefore = new Map<string, Tried | undefined>()
  const mendings = new Map<string, readonly PutRightEvent[]>()
  return {
    tried,
    putRight,
    setTried(event) {
      const { way } = event
      const came = event.takenBack ? triedBefore.get(way) : cameOf(event)
      // What came of it once is not unsaid by another try that was left half done.
      const kept = event.brokenOff && tried.has(way) ? tried.get(way) : came
      triedBefore.set(way, tried.get(way))
      if (kept === undefined) tried.delete(way)
      else tried.set(way, kept)
    },
    setPutRight(event) {
      const before = mendings.get(event.of) ?? []
      const now = event.came === 'taken back' ? before.slice(0, -1) : [...before, event]
      mendings.set(event.of, now)
      const last = now.at(-1)
      if (last === undefined) putRight.delete(event.of)
      else putRight.set(event.of, last.came)
    },
    cures() {
      const last = [...mendings.values()].flatMap((said) => said.at(-1) ?? [])
      const of = (...came: readonly PutRight[]) =>
        last.filter((each) => came.includes(each.came)).flatMap(({ cures = [] }) => cures)
      return { cured: of('still there', 'done'), curedInVain: of('still there') }
    },
  }
}

function cameOf(event: TriedEvent): Tried {
  if (event.brokenOff) return 'broken off'
  if (event.asBefore) return 'as before'
  return event.helped ? 'helped' : 'no help'
}
