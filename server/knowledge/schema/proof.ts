import { z } from 'zod'
import { Name, Words } from './shared.ts'

/**
 * How a repair is proved, or that a complaint is gone, by what the engine does meanwhile. It is done in this
 * order: what has to be apart is measured first, then all is put back, cranked, and run at last.
 */
export const Proof = z
  .strictObject({
    /** With the engine stopped, and apart what has to be. */
    stopped: Words.optional(),
    /** With the engine together, while it is pulled or turned by its starter. */
    cranking: Words.optional(),
    /** With the engine together, and every cap on its own plug. */
    running: Words.optional(),
    /** What is seen once the engine turns, by a name: where the proof of the complaint sees it too, it is said once, there. */
    sees: Name.optional(),
  })
  .refine(({ stopped, cranking, running }) => Boolean(stopped ?? cranking ?? running), {
    error: 'say how it is proved: with the engine stopped, cranking or running',
  })
export type Proof = z.infer<typeof Proof>
