import { z } from 'zod'

/** Names in `trees/` are lower-case words joined by hyphens; they end up in addresses and test names. */
export const Name = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'write a name as lower-case words joined by hyphens')

/** A sentence or a few words for people. May hold placeholders in braces where the schema says so. */
export const Words = z.string().trim().min(1, 'write the words that people will read')

/**
 * Where a number comes from. A published document is named with its clause; everything else says
 * plainly that it is not published.
 */
export const Source = z.string().trim().min(3, 'say where the number comes from').meta({
  description:
    "A published document with its clause, or 'common practice', 'from memory', 'invented for the demo'.",
})

export const Minutes = z.number().positive().max(240)

/** Chance of each outcome; what is not listed has none. The lint checks that they sum to 1. */
export const Chances = z
  .record(z.string(), z.number().min(0).max(1))
  .meta({ description: 'Chance of each outcome, 0 to 1, summing to 1.' })
export type Chances = z.infer<typeof Chances>

export const Place = z.enum(['bench', 'trailside'])
export type Place = z.infer<typeof Place>

/** Editors look for this key; the loader does not. */
export const schemaKey = { $schema: z.string().optional() }
