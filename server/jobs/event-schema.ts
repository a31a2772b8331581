import { z } from 'zod'
import { Place } from '../knowledge/schema/shared.ts'
import type { Reading } from '../measure/reading.ts'
import type { Conditions, JobEvent } from './events.ts'

/**
 * What was written is checked again when it is read: a file from another version, or one that
 * somebody edited, is refused at the door instead of failing somewhere inside the diagnosis.
 */
const StoredReading = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('value'), value: z.number() }),
  z.strictObject({ kind: z.literal('over') }),
  z.strictObject({ kind: z.literal('answer'), answer: z.string() }),
  z.strictObject({ kind: z.literal('could-not-tell') }),
]) satisfies z.ZodType<Reading>

const StoredConditions = z.strictObject({
  where: Place,
  air: z.number(),
  engine: z.enum(['cold', 'hot']),
  tools: z.array(z.string()),
  meter: z.string(),
}) satisfies z.ZodType<Conditions>

const taken = { check: z.string(), typed: z.string(), reading: StoredReading }

export const JobEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    machine: z.string(),
    complaint: z.string(),
    conditions: StoredConditions,
    note: z.string(),
  }),
  z.strictObject({ kind: z.literal('reading'), ...taken }),
  z.strictObject({ kind: z.literal('correction'), ...taken }),
  z.strictObject({ kind: z.literal('withdrawn'), check: z.string() }),
  z.strictObject({ kind: z.literal('skipped'), check: z.string(), reason: z.string() }),
]) satisfies z.ZodType<JobEvent>
