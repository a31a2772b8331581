import type { Case, CheckCard } from '../../knowledge/case.ts'
import { beyondIn, doubtIn } from '../measuring/doubts.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import { measuredReading } from '../measuring/measured-reading.ts'
import type { MeterAtHand } from '../measuring/meter-at-hand.ts'
import type { JobEvent } from '../record/events.ts'
import { canBeMadeAnew, type Folded } from '../record/fold.ts'
import { asItStands } from '../standing/as-it-stands.ts'
import type { FoundJob } from '../standing/find.ts'
import { conditionsAt } from '../standing/way/still-hot.ts'
import { type CheckForm, readReason, readTouches, type Understood } from './check-form.ts'
import { readManner } from './manner.ts'

/** Something that can be posted about one check of a job, to `/jobs/:id/<its name>`. */
export interface Noun {
  /** The event that the form means, or what is wrong with the form. */
  readonly read: (
    card: CheckCard,
    form: CheckForm,
    found: FoundJob,
    meter: MeterAtHand,
  ) => Understood<{ event: JobEvent }>
  /** Why that event cannot be taken as the job stands now, or null if it can. */
  readonly refusal: (job: Folded, check: string) => string | null
  /** Whether there is something typed or chosen to show again, beside the sentence. */
  readonly hasField: boolean
}

export const nouns: Readonly<Record<string, Noun>> = {
  readings: {
    read: readingOf('reading'),
    refusal: (folded, check) =>
      folded.readings.has(check) && !canBeMadeAnew(folded, check)
        ? 'This check has a reading already; send yours as a correction if it is the better one.'
        : null,
    hasField: true,
  },
  corrections: {
    read: readingOf('correction'),
    refusal: ({ readings }, check) =>
      readings.has(check) ? null : 'The reading was withdrawn meanwhile; send yours as a new one.',
    hasField: true,
  },
  takes: {
    read: (card, form, { kase }, meter) => touchesOf(card, form, kase, meter),
    refusal: ({ readings }, check) =>
      readings.has(check) ? null : 'The reading was withdrawn meanwhile; send yours as a new one.',
    hasField: true,
  },
  withdrawals: {
    read: ({ id }) => ({ ok: true, event: { kind: 'withdrawn', check: id } }),
    refusal: ({ readings }, check) =>
      readings.has(check) ? null : 'That check has no reading, so there is none to withdraw.',
    hasField: false,
  },
  acceptances: {
    read: ({ id }) => ({ ok: true, event: { kind: 'accepted', check: id } }),
    refusal: ({ readings }, check) =>
      readings.has(check)
        ? null
        : 'The reading was withdrawn meanwhile, so there is none to stand.',
    hasField: false,
  },
  skips: {
    read: skipOf,
    refusal: ({ readings }, check) =>
      readings.has(check) ? 'That check has a reading already, so it is not skipped.' : null,
    hasField: true,
  },
}

function readingOf(kind: 'reading' | 'correction'): Noun['read'] {
  return (card, form, { kase, folded, job }, meter) => {
    const read = readTouches(card, form)
    if (!read.ok) return read
    const { conditions } = folded
    const how = readManner(card, form, conditionsAt(asItStands(kase, job), card, conditions))
    if (!how.ok) return how
    const { typed, touches } = read
    const { manner } = how
    const measured = measuredReading(card, { takes: [touches], manner }, meter, conditions)
    const doubt = doubtIn(kase, card, { typed, touches, measured }, meter)
    if (doubt !== null && form.kept !== typed) return { ok: false, sentence: doubt }
    return { ok: true, event: { kind, check: card.id, typed, touches, manner } }
  }
}

function touchesOf(
  card: CheckCard,
  form: CheckForm,
  kase: Case,
  meter: MeterAtHand,
): Understood<{ event: JobEvent }> {
  if (!allowsFurtherTake(kase, card.id)) {
    return {
      ok: false,
      sentence: 'Asked again it comes out the same; correct the answer if it was misheard.',
    }
  }
  const read = readTouches(card, form)
  if (!read.ok) return read
  const { typed, touches } = read
  const beyond = beyondIn(card, touches, meter)
  if (beyond !== null && form.kept !== typed) return { ok: false, sentence: beyond }
  return { ok: true, event: { kind: 'take', check: card.id, typed, touches } }
}

function skipOf({ id }: CheckCard, form: CheckForm): Understood<{ event: JobEvent }> {
  const read = readReason(form)
  if (!read.ok) return read
  const { reason } = read
  const begun = ['yes', 'no'].includes(form.begun) ? { isBegun: form.begun === 'yes' } : {}
  const event = { kind: 'skipped', check: id, reason, ...begun } as const
  return { ok: true, event }
}
