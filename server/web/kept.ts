import type { FastifyRequest } from 'fastify'
import { textsOf } from './fields.ts'

/** What a form was sent with and could not be taken: `errors/_kept`. */
export interface Kept {
  readonly says: string
  /** What a person typed or answered, without what was left empty. */
  readonly facts: readonly SentFact[]
  /** The form to send it once more, where that may help. */
  readonly again?: {
    readonly action: string
    /** Every field as it came; a name may come several times. */
    readonly fields: readonly { readonly name: string; readonly value: string }[]
  }
}

/** One field that a person filled in: its name, what it is called, and what stood in it. */
export interface SentFact {
  readonly name: string
  readonly label: string
  readonly value: string
}

/** By its name: what a field is called in its form, and what a value of it is called there. */
export type FieldWords = Readonly<Record<string, FieldWord>>

export interface FieldWord {
  readonly label: string
  readonly says?: (value: string) => string
}

/** What was posted and could not be taken, to be read and sent once more; nothing where the request was no form. */
export function keptFrom(request: FastifyRequest, words: FieldWords): Kept | undefined {
  if (!isForm(request)) return undefined
  const { body, url } = request
  return {
    says: 'What you sent was not recorded. It is kept on this page, and can be sent again.',
    facts: factsSent(body, words),
    again: {
      action: url,
      fields: Object.keys(Object(body)).flatMap((name) =>
        textsOf(body, name).map((value) => ({ name, value })),
      ),
    },
  }
}

/** The same where there is nothing to send it to: only to be read. Nothing where nobody typed anything. */
export function keptToRead(request: FastifyRequest, words: FieldWords): Kept | undefined {
  const facts = isForm(request) ? factsSent(request.body, words) : []
  return facts.length === 0 ? undefined : { says: 'What you sent was not recorded.', facts }
}

/** A file cannot be put into a form again: it is chosen anew. */
function isForm({ method, headers }: FastifyRequest): boolean {
  return method === 'POST' && !headers['content-type']?.startsWith('multipart/')
}

/** What a person typed or answered in a form, field by field; a row of a table (`typed.x`) is called as its column. */
export function factsSent(body: unknown, words: FieldWords): SentFact[] {
  const known = new Map(Object.entries(words))
  return Object.keys(Object(body)).flatMap((name) => {
    const word = known.get(name) ?? known.get(name.split('.')[0] ?? '')
    return word === undefined ? [] : factOf(body, name, word)
  })
}

function factOf(body: unknown, name: string, { label, says = asTyped }: FieldWord): SentFact[] {
  const texts = textsOf(body, name).filter((text) => text.trim() !== '')
  return texts.length === 0 ? [] : [{ name, label, value: texts.map(says).join(', ') }]
}

const asTyped = (value: string) => value
