import { z } from 'zod'
import { Name, Words } from './shared.ts'

const What = z.strictObject({
  engine: z
    .array(z.enum(['cranking', 'running']))
    .min(1)
    .optional(),
  checks: z.array(Name).min(1).optional(),
  until: Name,
  /** Why, a sentence: it stands on the page of what is barred. */
  says: Words,
})

const namesOne = ({ engine, checks }: Pick<z.infer<typeof What>, 'engine' | 'checks'>) =>
  engine !== undefined || checks !== undefined
const error = 'say in engine or in checks what is not done'

/** What is not done, with the engine or of some kinds of check, until a check of some kind has been made. */
export const Barring = What.refine(namesOne, { error })

/** The same after an answer: it may hold as long as the answer does. */
export const AnswerBarring = What.partial({ until: true }).refine(namesOne, { error })
