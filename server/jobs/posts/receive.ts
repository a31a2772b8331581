import { isDeepStrictEqual } from 'node:util'
import type { FastifyRequest } from 'fastify'
import { named } from '../../diagnosis/model/named.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import { meterAtHand } from '../measuring/meter-at-hand.ts'
import type { JobEvent, StoredJob } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import type { Asked, Refused } from '../standing/asked.ts'
import { type FoundJob, findJob, type Missing, noSuchCheck } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { type CheckForm, checkFormFrom } from './check-form.ts'
import { type Noun, nouns } from './nouns.ts'

/** What came of a post: it was taken, it cannot be, or it names something that is not there. */
export type Answered = { readonly job: number } | Returned | Missing

/** The same page again, as the job is now, with a sentence and what was typed. */
export interface Returned {
  readonly status: 409 | 422
  readonly found: FoundJob
  readonly asked: Asked
}

/** Takes one post about one check: finds the job, reads the form, and appends what it means. */
export async function receive(
  parts: JobParts,
  noun: Noun,
  request: FastifyRequest,
): Promise<Answered> {
  const found = await findJob(parts, request)
  if ('missing' in found) return found
  const form = checkFormFrom(request.body)
  const card = found.kase.checks.get(form.check)
  if (card === undefined) return { missing: noSuchCheck, job: found.job.id }

  const meter = meterAtHand(parts.knowledge, found.folded)
  const read = noun.read(card, form, found, meter)
  if (!read.ok) return returned(422, found, noun, form, read.sentence)
  if (isDoubled(found.job, form, read.event)) return { job: found.job.id }
  const refusal = noun.refusal(found.folded, form.check)
  if (refusal !== null) return returned(409, found, noun, form, refusal)
  return append(parts, noun, request, found, form, read.event)
}

async function append(
  parts: JobParts,
  noun: Noun,
  request: FastifyRequest,
  { job }: FoundJob,
  form: CheckForm,
  event: JobEvent,
): Promise<Answered> {
  const done = await parts.jobs.append(job.id, form.version, event)
  if (done === 'written') return { job: job.id }
  const moved = await findJob(parts, request)
  return 'missing' in moved ? moved : returned(409, moved, noun, form, movedOn)
}

/** A button pressed twice, with gloves on, is one post and not a quarrel with oneself. */
function isDoubled({ version, events }: StoredJob, form: CheckForm, event: JobEvent): boolean {
  return version === form.version + 1 && isDeepStrictEqual(events.at(-1)?.event, event)
}

/**
 * A check that has a reading by now is shown as a correction, so that what was typed finds a field;
 * more touches of it go back to their own.
 */
function returned(
  status: 409 | 422,
  found: FoundJob,
  noun: Noun,
  { check, choice, typed, warmth, celsius, rpm, asTake }: CheckForm,
  sentence: string,
): Returned {
  if (!noun.hasField) return { status, found, asked: { notice: sentence } }
  const kept = choice === 'over' ? `${typed} OL`.trim() : typed
  const refused = { check, typed: kept, sentence, warmth, celsius, rpm }
  const has = found.folded.readings.has(check)
  if (has && noun === nouns.takes) {
    return { status, found, asked: takeReturned(found, refused, asTake) }
  }
  const field = has ? { correcting: check } : { check }
  return { status, found, asked: { ...field, refused } }
}

/** Beside the reading, in the form that asked for the check once more, or above all where there is neither. */
function takeReturned({ kase }: FoundJob, refused: Refused, asTake: boolean): Asked {
  const { check, sentence } = refused
  if (asTake && allowsFurtherTake(kase, check)) return { take: check, refused }
  return named(kase.checks, check).measurand ? { takeRefused: refused } : { notice: sentence }
}
