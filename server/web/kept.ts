import type { FastifyRequest } from 'fastify'
import { textsOf } from './fields.ts'

/** What a form was sent with, to be read and sent once more: `errors/_kept`. */
export interface Kept {
  readonly says: string
  /** What a person typed or answered, without what was left empty. */
  readonly facts: readonly { readonly label: string; readonly value: string }[]
  readonly action: string
  /** Every field as it came; a name may come several times. */
  readonly fields: readonly { readonly name: string; readonly value: string }[]
}

/** By its name: what a field is called in its form, and what a value of it is called there. */
export type FieldWords = Readonly<Record<string, FieldWord>>

export interface FieldWord {
  readonly label: string
  readonly says?: (value: string) => string
}

/** What was posted and could not be taken; nothing where the request was no form. */
export function keptFrom(
  { method, url, body, headers }: FastifyRequest,
  words: FieldWords,
): Kept | undefined {
  // A file cannot be put into a form again: it is chosen anew.
  const hasFile = headers['content-type']?.startsWith('multipart/') ?? false
  if (method !== 'POST' || hasFile) return undefined
  const names = Object.keys(Object(body))
  const known = new Map(Object.entries(words))
  return {
    says: 'What you sent was not recorded. It is kept on this page, and can be sent again.',
    facts: names.flatMap((name) => {
      const word = known.get(name)
      return word === undefined ? [] : factOf(body, name, word)
    }),
    action: url,
    fields: names.flatMap((name) => textsOf(body, name).map((value) => ({ name, value }))),
  }
}

function factOf(body: unknown, name: string, { label, says = asTyped }: FieldWord): Kept['facts'] {
  const texts = textsOf(body, name).filter((text) => text.trim() !== '')
  return texts.length === 0 ? [] : [{ label, value: texts.map(says).join(', ') }]
}

const asTyped = (value: string) => value
