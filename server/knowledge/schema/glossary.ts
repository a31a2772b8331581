import { z } from 'zod'
import { Name, schemaKey, Words } from './shared.ts'

/** The pictures of parts that there are: a drawing of each is in `server/drawings/parts/`. */
export const pictureNames = [
  'winding',
  'pickup',
  'coil',
  'plug',
  'igniter',
  'module',
  'flywheel',
  'key',
  'stop-switch',
  'tether',
  'connector',
  'regulator',
  'battery',
  'points',
  'lamp',
  'fuse',
] as const
export type PictureName = (typeof pictureNames)[number]

/** `trees/glossary.yaml`: the words of the trade, for whoever has never held a feeler gauge. */
export const Glossary = z.strictObject({
  ...schemaKey,
  words: z.record(
    Name,
    z.strictObject({
      word: Words,
      /** One sentence or two. */
      says: Words,
      /** Other forms in which pages use it. A plural with an s need not be told. */
      forms: z.array(Words).min(1).optional(),
      /** Kinds of part that go by it. */
      kinds: z.array(Name).min(1).optional(),
      picture: z.enum(pictureNames).optional(),
      /** Words that explain it further. */
      see: z.array(Name).min(1).optional(),
    }),
  ),
})
export type Glossary = z.infer<typeof Glossary>
