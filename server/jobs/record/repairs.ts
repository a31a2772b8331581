import { asides, type Conditions, type JobEvent, type Repaired, type StoredJob } from './events.ts'

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

/** Whether a repair can be taken back; one in vain has opened its checks again, and stays. */
export const canBeTakenBack = (last: Repair | undefined): last is Repair =>
  last !== undefined && last.outcome !== 'still there'

/** What was said of the last repair does not stand: it waits for its proof again. */
export function unproveLast(repairs: Repair[]): void {
  const last = repairs.pop()
  if (last === undefined) return
  const { provedAt: _, read: __, ...repair } = last
  repairs.push({ ...repair, outcome: null })
}

/** Whether it was said last of all that the last repair did not help, so that this can be taken back. */
export function canBeUnproved({ events }: StoredJob): boolean {
  const last = events.findLast(({ event }) => !asides.includes(event.kind))?.event
  return last?.kind === 'proved' && !last.gone
}

/** The complaint was tried again: what came of the last repair. */
export function proveLast(repairs: Repair[], { gone, read }: Proved, provedAt: Date): void {
  const last = repairs.pop()
  if (last !== undefined) {
    const outcome = gone ? 'gone' : 'still there'
    repairs.push({ ...last, outcome, provedAt, ...(read !== undefined && { read }) })
  }
}
