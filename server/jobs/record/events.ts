import type { Ranges } from '../../knowledge/meters.ts'
import type { Place } from '../../knowledge/schema/shared.ts'
import type { Scope } from '../../knowledge/sheet/scope.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import type { DegreeUnit } from '../../web/typed/temperature.ts'
import type { Counted } from './confirmed.ts'
import type { JobSummary } from './summary.ts'

/** How things stand, as it was said last. */
export interface Conditions {
  readonly where: Place
  /** Air temperature in °C. */
  readonly air: number
  /** The unit that it was given in. Left out, in older jobs: °C. */
  readonly airUnit?: DegreeUnit | undefined
  readonly engine: 'cold' | 'hot'
  /** Names of tools at hand. */
  readonly tools: readonly string[]
  /** Name of the meter class. */
  readonly meter: string
  /** Who is at the machine. Left out, in older jobs: whoever writes it down. */
  readonly who?: Who | undefined
  /** What an owner has with them, by name in `owner.yaml`; nothing but where an owner is at the machine. */
  readonly kit?: readonly string[] | undefined
  /** It drives a boat that is on the water; only where an owner is at the machine. Left out: it is on land. */
  readonly afloat?: true | undefined
}

/** Who is at the machine: whoever writes it down, an owner on the phone, or an apprentice beside them. */
export const whos = ['self', 'owner', 'apprentice'] as const
export type Who = (typeof whos)[number]

/** A meter class of the knowledge, or somebody's own meter. */
export type MeterChoice =
  | { readonly kind: 'class'; readonly id: string }
  | { readonly kind: 'own'; readonly name: string; readonly ranges: Ranges }

/** How warm a part was when it was read. */
export type PartWarmth =
  | { readonly kind: 'as the air' | 'cold-soaked' | 'hand-warm' | 'running hot' }
  | { readonly kind: 'measured'; readonly celsius: number }

/** What else is known of a reading. */
export interface Manner {
  readonly warmth: PartWarmth
  /** Speed while it was read, revolutions a minute, where it is known. */
  readonly rpm?: number
}

/** One check as it was made: what was typed, and each touch of the probes or the one answer. */
interface Made {
  readonly check: string
  readonly typed: string
  readonly touches: Touches
  readonly manner: Manner
}

/** What a check-over is of, and what its report says besides. */
export interface Over {
  readonly scope: Scope
  /** As typed; may be empty. */
  readonly serial: string
  /** Who made it; may be empty. */
  readonly by: string
  /** The job number of an earlier check-over to stand beside, where there is one. */
  readonly before?: number | undefined
}

/** What the sheet of a job says of the machine and of people: as typed, and each may be empty. */
export interface Particulars {
  readonly serial: string
  /** Hours or distance run. */
  readonly hours: string
  readonly customer: string
  readonly technician: string
}

/** These parts were repaired or replaced, and what else was written down of it. */
export interface Repaired {
  /** None where it was no part of the tree. */
  readonly parts: readonly string[]
  /** What it was where it was no part of the tree, in the words of whoever found it: free text, never empty. */
  readonly cause?: string
  /** The failure that was seen, by name, where somebody said so. */
  readonly fault?: string
  /** Free text. */
  readonly note?: string
  /** As it was typed, with its currency. */
  readonly price?: string
  readonly minutes?: number
}

/** What an owner by phone may have been in the middle of when something else came up. */
export interface Begun {
  /** The check that they may have begun, or none. */
  readonly begun?: string | null | undefined
  /** What they were told to put right: of which check or part, for which failure, and the set-ups that it puts back. */
  readonly mending?:
    | ({ readonly of: string; readonly fault?: string | undefined } & HalfDone)
    | undefined
}

/** What may be so where something was left half done. */
export interface HalfDone {
  /** Set-ups that it puts back, by name. */
  readonly undoes?: readonly string[] | undefined
  /** What it opens and no set-up knows of, by its name in `home.yaml`. */
  readonly opens?: readonly string[] | undefined
  /** Those of them that it sets otherwise, by the same names: done in vain, they are so still. */
  readonly stays?: readonly string[] | undefined
}

/**
 * What happened on a job, in order. The first is always `opened`. Readings are keyed by check, so a
 * correction names the check, never a position.
 */
export type JobEvent =
  | {
      readonly kind: 'opened'
      readonly machine: string
      readonly complaint: string
      readonly conditions: Conditions
      /** Whose machine, or any note: free text, may be empty. */
      readonly note: string
      /** There is no complaint: it is a check-over of this. */
      readonly over?: Over | undefined
    }
  | ({ readonly kind: 'reading' } & Made)
  | ({ readonly kind: 'correction' } & Made & Begun)
  /** More touches of the same probes at the same place, or one more look. */
  | ({ readonly kind: 'take' } & Omit<Made, 'manner'>)
  /** Something is otherwise by now: the place, the air, the engine, the tools, or what is noted. */
  | ({
      readonly kind: 'conditions'
      readonly conditions: Conditions
      readonly note: string
    } & Begun)
  /** Another meter, or its leads zeroed: Ω with the probes held together, null where they are not. */
  | { readonly kind: 'meter'; readonly meter: MeterChoice; readonly zero: number | null }
  | ({ readonly kind: 'withdrawn'; readonly check: string } & Begun)
  | ({ readonly kind: 'repaired' } & Repaired)
  /**
   * The complaint was tried again after the last repair. If it is still there, the checks that may have
   * shown the repaired parts are open again.
   */
  | {
      readonly kind: 'proved'
      readonly gone: boolean
      readonly reopened: readonly string[]
      /** What was read meanwhile: free text. */
      readonly read?: string | undefined
    }
  /** The last repair is taken back, and its proof with it: it was written down by mistake. */
  | { readonly kind: 'repair withdrawn' }
  /** That the complaint came back was said by mistake: the last repair waits for its proof again. */
  | { readonly kind: 'proof withdrawn' }
  /** What the sheet says of the machine and of people, all of it anew. */
  | ({ readonly kind: 'particulars' } & Particulars)
  /** A reading is not to be asked for once more: it stands as it is. */
  | ({ readonly kind: 'accepted'; readonly check: string } & Begun)
  | {
      readonly kind: 'skipped'
      readonly check: string
      readonly reason: string
      /** Whether an owner had heard some of what is done for it, and may have done that. Left out: by what the reason says. */
      readonly isBegun?: boolean | undefined
    }
  /** A set-up that a page takes to hold does not: somebody put it back unasked. */
  | { readonly kind: 'back'; readonly setup: string }
  /** The line went dead while an owner was at this check, or at none; or on this way home, with what it leaves apart. */
  | {
      readonly kind: 'cut off'
      readonly at: string | null
      readonly way?: string | undefined
      readonly leaves?: readonly string[] | undefined
      /** Of what was being put right, or of the way home. */
      readonly half?: HalfDone | undefined
    }
  /** An owner tried a way to get home, by its name in `home.yaml`; what it leaves apart or off, by name. */
  | {
      readonly kind: 'tried'
      readonly way: string
      readonly helped: boolean
      /** They go with it, and it runs no better than before: the way says nothing of the cause. */
      readonly asBefore?: true | undefined
      /** They left it half done, and nobody knows how far they had come: it says nothing of the cause. */
      readonly brokenOff?: true | undefined
      /** What was said last of it came by mistake, and does not stand. */
      readonly takenBack?: true | undefined
      /** The check that they may have begun before it, where it was left half done. */
      readonly at?: string | undefined
      readonly leaves?: readonly string[] | undefined
      /** What may be open where it was left half done; else what it set otherwise and leaves so. */
      readonly half?: HalfDone | undefined
    }
  /**
   * An owner was told how to put right what was seen there and then: what an answer told of, by the name of its check,
   * or what was suspected, by that of the part, and then the failures of it that this cures. What came of it.
   */
  | {
      readonly kind: 'put right'
      readonly of: string
      readonly came: PutRight
      readonly cures?: readonly string[] | undefined
      /** What it puts back and opens: done, or where nobody could do it, perhaps half done. */
      readonly half?: HalfDone | undefined
    }
  /** Whether what was repaired counts towards the base rates, and why not. Left out: it does. */
  | { readonly kind: 'counting'; readonly counts: boolean; readonly reason: string }

/** A way home helped, they go although it is as before, it does not run, it ran and they rang again, or left half done. */
export type Tried = 'helped' | 'as before' | 'no help' | 'stopped' | 'broken off'

export const gotGoing = (came: Tried): boolean => came === 'helped' || came === 'as before'

/**
 * It was tried and is as before; it was done, and nothing can be tried yet; nobody could do it; or what was said came by
 * mistake.
 */
export const putRights = ['still there', 'done', 'not done', 'taken back'] as const
export type PutRight = (typeof putRights)[number]

/** A job as it is kept: its events, and when each was written. */
export interface StoredJob {
  readonly id: number
  /** Number of events; every new event names the version it was made on. */
  readonly version: number
  readonly events: readonly { readonly event: JobEvent; readonly at: Date }[]
  /** The confirmed repairs that its base rates go by. Left out: none. */
  readonly counted?: Counted | undefined
}

/** One line of the jobs list. */
export interface JobLine {
  readonly id: number
  readonly machine: string
  readonly complaint: string
  readonly note: string
  readonly openedAt: Date
  readonly changedAt: Date
  readonly events: number
  /** Null where the job was changed last before there were summaries, until it is caught up with. */
  readonly summary: JobSummary | null
}

/** What may be written down of a job without anybody being at the machine. */
export const asides: readonly JobEvent['kind'][] = [
  'conditions',
  'particulars',
  'meter',
  'counting',
]
