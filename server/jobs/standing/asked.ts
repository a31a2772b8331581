import type { PhotoRecord } from '../../store/photos/records.ts'
import type { SentFact } from '../../web/kept.ts'
import type { Room } from './rooms.ts'

/** What somebody asked to see on a job's page, or sent and could not be taken. */
export interface Asked {
  /** The rooms beside the check that are open; all others are folded. */
  readonly rooms?: ReadonlySet<Room>
  /** The photos of the job, for the rooms that show them. */
  readonly photos?: readonly PhotoRecord[]
  /** A part in which somebody has seen the fault with their own eyes, or `notListed`. */
  readonly found?: string
  /** What was to be written down of a repair and could not be taken. */
  readonly repairRefused?: RepairForm & { readonly problem?: RepairProblem }
  /** What was read at a proof that could not be taken, and what is wrong with it, if anything. */
  readonly proofRefused?: { readonly read: string; readonly problem?: string }
  /** By phone: number of the sentence to say, from 1. */
  readonly line?: number
  /** By phone: the page as whoever is at the machine would have it. */
  readonly whole?: true
  /** Words to look for among the other checks. */
  readonly find?: string
  /** A check chosen instead of the proposed one. */
  readonly check?: string
  /** A check that is made once more. */
  readonly take?: string
  /** A check whose earlier reading is being corrected. */
  readonly correcting?: string
  /** What was typed for which check and could not be taken. */
  readonly refused?: Refused
  /** The same of more touches of a check that has a reading. */
  readonly takeRefused?: Refused
  /** Why a check was to be skipped, where that could not be taken. */
  readonly skipRefused?: Pick<Refused, 'check' | 'sentence'> & { readonly reason: string }
  /** What was typed for the leads of the meter and could not be taken, with a sentence. */
  readonly zeroRefused?: { readonly typed: string; readonly sentence: string }
  /** Something about the whole page: "this job has moved on". */
  readonly notice?: string
  /** All that was typed into a form that could not be taken, whether it has a field on this page or not. */
  readonly sent?: readonly SentFact[]
}

/** Stands where a part would for what is none of them; no part can be called so. */
export const notListed = '-'

/** What the form of a repair holds, as text. */
export interface RepairForm {
  /** Names of parts, joined by `+`, or `notListed`. */
  readonly parts: string
  /** What it was, where it is not listed. */
  readonly cause: string
  readonly fault: string
  readonly note: string
  readonly price: string
  readonly minutes: string
}

/** The field of a repair that is wrong, and what to do about it. */
export interface RepairProblem {
  readonly field: keyof RepairForm
  readonly says: string
}

/** A form about a check that could not be taken: what it held, and what to do. */
export interface Refused {
  readonly check: string
  readonly typed: string
  readonly sentence: string
  readonly warmth?: string
  readonly celsius?: string
  readonly rpm?: string
}

/** What is wrong with what was sent, in the one sentence that is read out first. */
export function wrongIn(asked: Asked): string | undefined {
  const { notice, refused, takeRefused, skipRefused, zeroRefused, repairRefused, proofRefused } =
    asked
  const form = refused ?? takeRefused ?? skipRefused ?? zeroRefused
  return notice ?? form?.sentence ?? repairRefused?.problem?.says ?? proofRefused?.problem
}

/** The address of the same check on the page of the same job, with something more asked for: `open=tree`. */
export function sameCheck(
  { job, check, take, correcting, whole }: Asked & { readonly job: { readonly id: number } },
  more: string,
): string {
  const shown = Object.entries({ check, take, correct: correcting }).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}=${encodeURIComponent(value)}`],
  )
  return `/jobs/${job.id}?${[...shown, ...(whole ? ['whole=yes'] : []), more].join('&')}`
}
