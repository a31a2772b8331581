import { z } from 'zod'
import { Place } from '../../knowledge/schema/shared.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import { bySetting } from '../../measure/reading/settings.ts'
import { degreeUnits } from '../../web/typed/temperature.ts'
import {
  type Conditions,
  type JobEvent,
  type Manner,
  type MeterChoice,
  type Over,
  putRights,
  whos,
} from './events.ts'

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
  airUnit: z.enum(degreeUnits).optional(),
  engine: z.enum(['cold', 'hot']),
  tools: z.array(z.string()),
  meter: z.string(),
  who: z.enum(whos).optional(),
  kit: z.array(z.string()).optional(),
  afloat: z.literal(true).optional(),
}) satisfies z.ZodType<Conditions>

const StoredRange = z.strictObject({
  top: z.number(),
  digit: z.number(),
  percent: z.number(),
  counts: z.number(),
})

const StoredMeter = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('class'), id: z.string() }),
  z.strictObject({
    kind: z.literal('own'),
    name: z.string(),
    // A meter that was entered before there was some setting has no ranges of it.
    ranges: z.strictObject(bySetting(() => z.array(StoredRange).default([]))),
  }),
]) satisfies z.ZodType<MeterChoice>

const StoredManner = z.strictObject({
  warmth: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.enum(['as the air', 'cold-soaked', 'hand-warm', 'running hot']) }),
    z.strictObject({ kind: z.literal('measured'), celsius: z.number() }),
  ]),
  rpm: z.number().optional(),
}) satisfies z.ZodType<Manner>

const StoredOver = z.strictObject({
  scope: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('machine') }),
    z.strictObject({ kind: z.literal('plug'), plug: z.string() }),
    z.strictObject({ kind: z.literal('loose'), assembly: z.string() }),
  ]),
  serial: z.string(),
  by: z.string(),
  before: z.number().optional(),
}) satisfies z.ZodType<Over>

const take = {
  check: z.string(),
  typed: z.string(),
  touches: z.tuple([StoredReading], StoredReading),
}
const made = { ...take, manner: StoredManner }
const halfDone = {
  undoes: z.array(z.string()).optional(),
  opens: z.array(z.string()).optional(),
  stays: z.array(z.string()).optional(),
}
const half = { half: z.strictObject(halfDone).optional() }
const begun = {
  begun: z.string().nullish(),
  mending: z.strictObject({ of: z.string(), fault: z.string().optional(), ...halfDone }).optional(),
}

/** What kinds of events were called before, as they still stand in older jobs. */
const formerKinds: ReadonlyMap<string, JobEvent['kind']> = new Map([
  ['touched', 'take'],
  ['instrument', 'meter'],
])

/** What a kind of event is called now. */
export const kindNow = (kind: string): string => formerKinds.get(kind) ?? kind

export const JobEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    machine: z.string(),
    complaint: z.string(),
    conditions: StoredConditions,
    note: z.string(),
    over: StoredOver.optional(),
  }),
  z.strictObject({
    kind: z.literal('conditions'),
    conditions: StoredConditions,
    note: z.string(),
    ...begun,
  }),
  z.strictObject({ kind: z.literal('reading'), ...made }),
  z.strictObject({ kind: z.literal('correction'), ...made, ...begun }),
  z.strictObject({ kind: z.literal('take'), ...take }),
  z.strictObject({
    kind: z.literal('meter'),
    meter: StoredMeter,
    zero: z.number().nullable(),
  }),
  z.strictObject({ kind: z.literal('withdrawn'), check: z.string(), ...begun }),
  z
    .strictObject({
      kind: z.literal('repaired'),
      parts: z.array(z.string()),
      cause: z.string().min(1).optional(),
      fault: z.string().optional(),
      note: z.string().optional(),
      price: z.string().optional(),
      minutes: z.number().optional(),
    })
    .refine(({ parts, cause }) => (parts.length === 0) === (cause !== undefined), {
      error: 'a repair is of parts, or of a cause that is none of them',
    }),
  z.strictObject({
    kind: z.literal('proved'),
    gone: z.boolean(),
    reopened: z.array(z.string()),
    read: z.string().optional(),
  }),
  z.strictObject({ kind: z.literal('repair withdrawn') }),
  z.strictObject({ kind: z.literal('proof withdrawn') }),
  z.strictObject({
    kind: z.literal('particulars'),
    serial: z.string(),
    hours: z.string(),
    customer: z.string(),
    technician: z.string(),
  }),
  z.strictObject({ kind: z.literal('accepted'), check: z.string(), ...begun }),
  z.strictObject({
    kind: z.literal('skipped'),
    check: z.string(),
    reason: z.string(),
    isBegun: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('back'), setup: z.string() }),
  z.strictObject({
    kind: z.literal('cut off'),
    at: z.string().nullable(),
    way: z.string().optional(),
    leaves: z.array(z.string()).optional(),
    ...half,
  }),
  z.strictObject({
    kind: z.literal('tried'),
    way: z.string(),
    helped: z.boolean(),
    asBefore: z.literal(true).optional(),
    brokenOff: z.literal(true).optional(),
    takenBack: z.literal(true).optional(),
    at: z.string().optional(),
    leaves: z.array(z.string()).optional(),
    ...half,
  }),
  z.strictObject({
    kind: z.literal('put right'),
    of: z.string(),
    came: z.enum(putRights),
    cures: z.array(z.string()).optional(),
    ...half,
  }),
  z.strictObject({ kind: z.literal('counting'), counts: z.boolean(), reason: z.string() }),
]) satisfies z.ZodType<JobEvent>
