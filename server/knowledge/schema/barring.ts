import { z } from 'zod'
import { Name, Words } from './shared.ts'

/** Nothing is done with the engine so, until a check of that kind has been made. */
export const Barring = z.strictObject({
  engine: z.array(z.enum(['cranking', 'running'])).min(1),
  until: Name,
  /** Why, a sentence: it stands on the page of what is barred. */
  says: Words,
})

/** The same after an answer: it may be about some checks alone, and hold as long as the answer does. */
export const AnswerBarring = Barring.partial({ engine: true, until: true })
  .extend({ checks: z.array(Name).min(1).optional() })
  .refine(({ engine, checks }) => engine !== undefined || checks !== undefined, {
    error: 'say in engine or in checks what is not done',
  })
