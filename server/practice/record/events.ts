import { z } from 'zod'
import { pulls } from '../seen/making.ts'

/** How the hidden fault is chosen. */
export const levels = ['any', 'easy', 'hard'] as const
export type Level = (typeof levels)[number]

/** What begins a round. All that is drawn follows from it, so nothing drawn is kept. */
const Opened = z.strictObject({
  kind: z.literal('opened'),
  machine: z.string(),
  complaint: z.string(),
  level: z.enum(levels),
  /** Words or a number: whoever begins with the same gets the same machine. */
  seed: z.string(),
  /** Which of the draws of this seed it is, from 0: an easy or a hard one is looked for among several. */
  draw: z.int().min(0),
  /** Who practises, as typed; may be empty. */
  who: z.string(),
})
export type Opened = z.infer<typeof Opened>

/** What happened in a round, in order. The first is always `opened`. */
export const RoundEvent = z.discriminatedUnion('kind', [
  Opened,
  /** A check was made, or made once more, with everything that it needs made ready. */
  z.strictObject({
    kind: z.literal('made'),
    check: z.string(),
    pull: z.enum(Object.keys(pulls) as [keyof typeof pulls]),
  }),
  /** Set-ups were put back. */
  z.strictObject({ kind: z.literal('back'), setups: z.array(z.string()).min(1) }),
  /** Somebody asked what the tool thinks. */
  z.strictObject({ kind: z.literal('asked') }),
  /** A part was bought and fitted. */
  z.strictObject({ kind: z.literal('fitted'), part: z.string() }),
  /** Nobody can tell, or nobody wants to go on. */
  z.strictObject({ kind: z.literal('cannot-tell') }),
])
export type RoundEvent = z.infer<typeof RoundEvent>

/** A round as it is kept. */
export interface StoredRound {
  readonly id: number
  /** Number of events; every new event names the version it was made on. */
  readonly version: number
  readonly opened: Opened
  readonly events: readonly { readonly event: RoundEvent; readonly at: Date }[]
}

/** What came of a round that is over. */
export const Result = z.strictObject({
  /** Kind of the part that had failed, and the complaint. */
  partKind: z.string(),
  complaint: z.string(),
  machine: z.string(),
  right: z.boolean(),
  minutes: z.number(),
  /** Of the tool on the same machine. */
  toolMinutes: z.number(),
  /** It did not find it, so its minutes are no measure. Left out: it did, or in older rounds nobody asked. */
  toolMissed: z.literal(true).optional(),
  /** Good parts that were bought. */
  bought: z.int(),
})
export type Result = z.infer<typeof Result>
