import { z } from 'zod'
import { Name, Words } from './shared.ts'

/** Nothing is done with the engine so, until a check of that kind has been made. */
export const Barring = z.strictObject({
  engine: z.array(z.enum(['cranking', 'running'])).min(1),
  until: Name,
  /** Why, a sentence: it stands on the page of what is barred. */
  says: Words,
})
