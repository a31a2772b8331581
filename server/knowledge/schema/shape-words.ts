import type { z } from 'zod'

/** What a value should be, by zod's name for it. */
const wanted: Readonly<Record<string, string>> = {
  string: 'words',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'names with their values below it',
  record: 'names with their values below it',
}

/** What is wrong with the shape of a file, in words that say what to do; what a schema says itself goes before. */
export const shapeWords: z.core.$ZodErrorMap = (issue) => {
  switch (issue.code) {
    case 'invalid_type': {
      const write = `write ${wanted[issue.expected] ?? issue.expected} here`
      return issue.input === undefined ? `this is missing; ${write}` : write
    }
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

/** In `{ high: 7,8 kΩ }` the comma ends the value, and what follows is taken for a name. */
function commaWords(keys: readonly string[], input: unknown): string | undefined {
  const rest = keys.find((key) => /^\d/.test(key))
  if (rest === undefined) return undefined
  const says = 'a comma ends a value here: write decimals with a point'
  const entries = Object.entries(Object(input))
  const [, before] = entries[entries.findIndex(([key]) => key === rest) - 1] ?? []
  return typeof before === 'number' ? `${says}, ${before}.${rest}` : says
}
