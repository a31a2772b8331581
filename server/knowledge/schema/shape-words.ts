import { z } from 'zod'

/** What a value should be, by zod's name for it. */
const wanted: Readonly<Record<string, string>> = {
  string: 'words here',
  number: 'a number here',
  boolean: 'true or false here',
  array: 'a list here, in [ ] or with a - before each',
  object: 'names with their values here',
  record: 'names of your own here, each with what belongs to it below it',
}

/** What is wrong with the shape of a file, in words that say what to do; what a schema says itself goes before. */
export const shapeWords: z.core.$ZodErrorMap = (issue) => {
  switch (issue.code) {
    case 'invalid_type': {
      const names = namesOf(issue.inst)
      const write = `write ${wanted[issue.expected] ?? `${issue.expected} here`}${names && `: ${names}`}`
      return issue.input === undefined ? `this is missing; ${write}` : write
    }
    case 'too_small':
    case 'too_big':
      return lengthWords(issue)
    case 'invalid_value':
      return `write one of ${issue.values.map(String).join(', ')}`
    case 'unrecognized_keys':
      return (
        commaWords(issue.keys, issue.input) ??
        `nothing here is called ${issue.keys.join(', ')}; look for its name in the guide, or leave it out`
      )
  }
  return undefined
}

/** The names that must or may stand below it: "mm, source". */
const namesOf = (schema: unknown): string =>
  schema instanceof z.ZodObject
    ? Object.keys(schema.shape)
        .filter((name) => !name.startsWith('$'))
        .join(', ')
    : ''

/** A list that is too long or too short; of words it is said where they are asked for. */
function lengthWords({ exact, origin, ...bounds }: LengthIssue): string | undefined {
  if (origin !== 'array') return undefined
  const count = 'minimum' in bounds ? bounds.minimum : bounds.maximum
  const most = 'minimum' in bounds ? 'at least' : 'at most'
  return exact ? `write exactly ${count} here` : `write ${most} ${count} here`
}

type LengthIssue = Extract<
  Parameters<z.core.$ZodErrorMap>[0],
  { readonly code: 'too_small' | 'too_big' }
>

/** In `{ high: 7,8 kΩ }` the comma ends the value, and what follows is taken for a name. */
function commaWords(keys: readonly string[], input: unknown): string | undefined {
  const rest = keys.find((key) => /^\d/.test(key))
  if (rest === undefined) return undefined
  const says = 'a comma ends a value here: write decimals with a point'
  const entries = Object.entries(Object(input))
  const [, before] = entries[entries.findIndex(([key]) => key === rest) - 1] ?? []
  return typeof before === 'number' ? `${says}, ${before}.${rest}` : says
}
