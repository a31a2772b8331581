import { mostTakes } from '../../diagnosis/belief/takes.ts'
import type { Reading, Touches } from '../../measure/reading/reading.ts'
import type {
  Conditions,
  JobEvent,
  Manner,
  MeterChoice,
  Particulars,
  PutRight,
  StoredJob,
  Tried,
} from './events.ts'
import { ownersTries, proveLast, type Repair, repairOf, stands, unproveLast } from './repairs.ts'

/** A job as its events leave it: what stands now. */
export interface Folded {
  readonly opened: Opened
  readonly openedAt: Date
  /** How things stand, as it was said last. */
  readonly conditions: Conditions
  /** Whose machine, or any note: as it was written last. */
  readonly note: string
  /** What the sheet says of the machine and of people, as it was written last. */
  readonly particulars: Particulars
  /** By check, in the order in which they were taken; a correction keeps its place. */
  readonly readings: ReadonlyMap<string, Recorded>
  /** Every check in the order in which somebody made it at the machine, each as often as it was made. */
  readonly made: readonly string[]
  /** The meter as it stands, and what its leads read: Ω, or null where they were not zeroed. */
  readonly meter: { readonly choice: MeterChoice; readonly zero: number | null }
  /** What was repaired, in order, and what came of it; null while it is not proved. */
  readonly repairs: readonly Repair[]
  /**
   * Checks whose reading stands as it is, and is not asked for once more: because somebody said so, or
   * because the last take could not be had, or because there were enough.
   */
  readonly accepted: ReadonlySet<string>
  /** Checks skipped, with the reason. A check with a reading is never among them. */
  readonly skipped: ReadonlyMap<string, string>
  /** What an owner tried to get home, by the name of the way, and what came of it the last time. */
  readonly tried: ReadonlyMap<string, Tried>
  /** What an owner was told to put right, by the check that told of it or the part, and what came of it. */
  readonly putRight: ReadonlyMap<string, PutRight>
  /** Failures that an owner put right, whatever came of it. */
  readonly cured: readonly string[]
  /** Those of them while the complaint stayed. */
  readonly curedInVain: readonly string[]
  /** Where the line went dead, or a way home was left half done, as long as nothing was taken since. */
  readonly cutOff?: CutOff
}

export type CutOff = Pick<Extract<JobEvent, { kind: 'cut off' }>, 'at' | 'way'>
export type Opened = Extract<JobEvent, { kind: 'opened' }>

export interface Recorded {
  readonly typed: string
  /** Every touch so far, in order; of an answer, every look. */
  readonly touches: Touches
  /** The touches of each take, first to last. */
  readonly takes: readonly Touches[]
  /** Where each take stands in what was made on the job. */
  readonly madeAt: readonly number[]
  readonly manner: Manner
  /** How things stood when it was read. */
  readonly conditions: Conditions
  /** The technician who was named when it was taken; empty where nobody was. Who is named later did not take it. */
  readonly by: string
  readonly at: Date
}

/** Replays the events. Nothing else ever says where a job stands. */
export function fold(events: StoredJob['events']): Folded {
  const readings = new Map<string, Recorded>()
  const made: string[] = []
  const skipped = new Map<string, string>()
  const accepted = new Set<string>()
  const furtherTakes = new Map<string, number>()
  const repairs: Repair[] = []
  const { tried, putRight, setTried, setPutRight, cures } = ownersTries()
  // What a repair in vain opened again, as it was read before.
  const reopened = new Map<string, { readonly before: Recorded; readonly isAccepted: boolean }>()
  const { opened, openedAt } = firstOf(events)
  let { conditions, note } = opened
  let particulars: Particulars = { serial: '', hours: '', customer: '', technician: '' }
  let meter: Folded['meter'] = {
    choice: { kind: 'class', id: conditions.meter },
    zero: null,
  }
  // By which way they are going, as long as nobody rings again.
  let going: string | undefined
  for (const { event, at } of events) {
    switch (event.kind) {
      case 'reading':
      case 'correction': {
        // What is put right at the desk was read when it was read, and by whom.
        const before = event.kind === 'correction' ? readings.get(event.check) : undefined
        if (before === undefined) made.push(event.check)
        readings.set(event.check, {
          typed: event.typed,
          touches: event.touches,
          takes: [event.touches],
          madeAt: before?.madeAt.slice(0, 1) ?? [made.length - 1],
          manner: event.manner,
          conditions: before?.conditions ?? conditions,
          by: before?.by ?? particulars.technician,
          at,
        })
        furtherTakes.delete(event.check)
        skipped.delete(event.check)
        accepted.delete(event.check)
        break
      }
      case 'take': {
        const before = readings.get(event.check)
        if (before === undefined) break
        made.push(event.check)
        const further = (furtherTakes.get(event.check) ?? 0) + 1
        furtherTakes.set(event.check, further)
        if (further + 1 >= mostTakes || !tells(event.touches)) accepted.add(event.check)
        readings.set(event.check, {
          ...before,
          typed: `${before.typed} ${event.typed}`.trim(),
          touches: [...before.touches, ...event.touches],
          takes: [...before.takes, event.touches],
          madeAt: [...before.madeAt, made.length - 1],
        })
        break
      }
      case 'repaired':
        repairs.push(repairOf(event, at, conditions))
        break
      case 'proved':
        proveLast(repairs, event, at)
        reopened.clear()
        for (const check of event.reopened) {
          const before = readings.get(check)
          if (before) reopened.set(check, { before, isAccepted: accepted.has(check) })
          readings.delete(check)
          accepted.delete(check)
        }
        break
      case 'proof withdrawn':
        unproveLast(repairs)
        for (const [check, { before, isAccepted }] of reopened) {
          readings.set(check, before)
          if (isAccepted) accepted.add(check)
        }
        break
      case 'repair withdrawn':
        if (stands(repairs.at(-1))) repairs.pop()
        break
      case 'conditions':
        conditions = event.conditions
        note = event.note
        break
      case 'particulars':
        particulars = event
        break
      case 'meter':
        meter = { choice: event.meter, zero: event.zero }
        break
      case 'withdrawn':
        readings.delete(event.check)
        accepted.delete(event.check)
        break
      case 'accepted':
        if (readings.has(event.check)) accepted.add(event.check)
        break
      case 'skipped':
        skipped.set(event.check, event.reason)
        break
      case 'tried':
        going = event.helped ? event.way : undefined
        setTried(event)
        break
      case 'put right':
        setPutRight(event)
        break
      case 'cut off':
        if (going !== undefined) tried.set(going, 'stopped')
        going = undefined
        break
      case 'opened':
      case 'back':
      case 'counting':
        break
    }
  }
  return {
    ...{ opened, openedAt, conditions, note, particulars, meter },
    ...{ readings, made, repairs, skipped, accepted, tried, putRight },
    ...cures(),
    ...cutOffAt(events.at(-1)?.event),
  }
}

/** Whatever was taken after it says that the line stood again, or that a way left half done was put right. */
function cutOffAt(last: JobEvent | undefined): Pick<Folded, 'cutOff'> {
  if (last?.kind === 'cut off') return { cutOff: last }
  const isHalfDone = last?.kind === 'tried' && last.brokenOff
  return isHalfDone ? { cutOff: { at: last.at ?? null, way: last.way } } : {}
}

/** The parts that were repaired while the complaint stayed: they are no suspects any more. */
export function repairedInVain(folded: Pick<Folded, 'repairs'>): readonly string[] {
  return repairsInVain(folded).flatMap(({ parts }) => parts)
}

/** The repairs after which the complaint stayed. */
export const repairsInVain = ({ repairs }: Pick<Folded, 'repairs'>): readonly Repair[] =>
  repairs.filter(({ outcome }) => outcome === 'still there')

/** Whether a reading is what an owner told by phone, and somebody else is at the machine now, who can make it anew. */
export function canBeMadeAnew({ readings, conditions }: Folded, check: string): boolean {
  return conditions.who !== 'owner' && readings.get(check)?.conditions.who === 'owner'
}

/** A take that could not be had will not be had by asking for it again. */
function tells(touches: readonly Reading[]): boolean {
  return touches.some(({ kind }) => kind !== 'could-not-tell')
}

function firstOf([first]: StoredJob['events']): Pick<Folded, 'opened' | 'openedAt'> {
  if (first?.event.kind === 'opened') return { opened: first.event, openedAt: first.at }
  throw new Error(`A job begins with "opened", not with "${first?.event.kind ?? 'nothing'}".`)
}
