import { isDeepStrictEqual } from 'node:util'
import type { FastifyRequest } from 'fastify'
import { named } from '../../diagnosis/model/named.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import { meterAtHand } from '../measuring/meter-at-hand.ts'
import type { Begun, JobEvent, StoredJob } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import type { Asked, Refused } from '../standing/asked.ts'
import { type FoundJob, findJob, type Missing } from '../standing/find.ts'
import { sentIn } from '../words/field-words.ts'
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

/**
 * Takes one post about one check: finds the job, reads the form, and appends what it means.
 *
 * @param begunIn what else was going on when an answer is put right or taken back, or is to stand
 */
export async function receive(
  parts: JobParts,
  noun: Noun,
  request: FastifyRequest,
  begunIn: (found: FoundJob) => Begun,
): Promise<Answered> {
  const found = await findJob(parts, request)
  if ('missing' in found) return found
  const form = checkFormFrom(request.body)
  const card = found.kase.checks.get(form.check)
  if (card === undefined) {
    const asked = { notice: noSuchCheckHere, sent: sentIn(request.body) }
    return { status: 422, found, asked }
  }
  const meter = meterAtHand(parts.knowledge, found.folded)
  const read = noun.read(card, form, found, meter)
  if (!read.ok) return returned(422, found, noun, request, read.sentence)
  if (isDoubled(found.job, form, read.event)) return { job: found.job.id }
  const refusal = noun.refusal(found.folded, form.check)
  if (refusal !== null) return returned(409, found, noun, request, refusal)
  const { kind } = read.event
  const begun = meanwhile.includes(kind) ? begunIn(found) : {}
  const done = await parts.jobs.append(found.job, form.version, { ...read.event, ...begun })
  if (done === 'written') return { job: found.job.id }
  const moved = await findJob(parts, request)
  return 'missing' in moved ? moved : returned(409, moved, noun, request, movedOn)
}

/** What may be said of another check while an owner is at one, or ends it before its last sentence. */
const meanwhile: readonly JobEvent['kind'][] = ['correction', 'withdrawn', 'accepted']

const noSuchCheckHere =
  'This job has no check of that name: choose one of its checks, and send yours again.'

/** A button pressed twice, with gloves on, is one post and not a quarrel with oneself. */
function isDoubled({ version, events }: StoredJob, form: CheckForm, event: JobEvent): boolean {
  const last = events.at(-1)?.event
  if (last === undefined || version !== form.version + 1) return false
  const { begun, mending, ...plain } = { begun: null, mending: null, ...last }
  return isDeepStrictEqual(plain, event)
}

function returned(
  status: 409 | 422,
  found: FoundJob,
  noun: Noun,
  { body }: FastifyRequest,
  sentence: string,
): Returned {
  const asked = comingBack(found, noun, checkFormFrom(body), sentence)
  return { status, found, asked: { ...asked, sent: sentIn(body) } }
}

/**
 * The form once more, or only the sentence where there is none. A check that has a reading by now is shown as
 * a correction, so that what was typed finds a field; more touches of it go back to their own.
 */
function comingBack(found: FoundJob, noun: Noun, form: CheckForm, sentence: string): Asked {
  const { check, choice, typed, reason, warmth, celsius, rpm, asTake } = form
  if (!noun.hasField) return { notice: sentence }
  const kept = choice === 'over' ? `${typed} OL`.trim() : typed
  const refused = { check, typed: kept, sentence, warmth, celsius, rpm }
  const has = found.folded.readings.has(check)
  if (noun === nouns.skips) {
    return has ? { notice: sentence } : { check, skipRefused: { check, reason, sentence } }
  }
  if (has && noun === nouns.takes) return takeReturned(found, refused, asTake)
  return has ? { correcting: check, refused } : { check, refused }
}

/** Beside the reading, in the form that asked for the check once more, or above all where there is neither. */
function takeReturned({ kase }: FoundJob, refused: Refused, asTake: boolean): Asked {
  const { check, sentence } = refused
  if (asTake && allowsFurtherTake(kase, check)) return { take: check, refused }
  return named(kase.checks, check).measurand ? { takeRefused: refused } : { notice: sentence }
}
