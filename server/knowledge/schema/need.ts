import { z } from 'zod'
import { Name } from './shared.ts'

/** A part of this role; or a part of every role in one of these lists. */
export const Need = z.union([
  Name,
  z.strictObject({ either: z.array(z.array(Name).min(1)).min(2) }),
])
export type Need = z.infer<typeof Need>
