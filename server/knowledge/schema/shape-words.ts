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
      return `nothing here is called ${issue.keys.join(', ')}; look for its name in the guide, or leave it out`
  }
  return undefined
}
