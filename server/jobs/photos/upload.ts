import type { IncomingMessage } from 'node:http'
import type { FastifyInstance, FastifyRequest } from 'fastify'

/** A form with a file, as it arrived. */
export type Upload =
  | { readonly kind: 'form'; readonly form: FormData }
  | { readonly kind: 'too large' | 'not whole' }

/** The largest file that is taken. */
export const mostBytes = 8 * 2 ** 20
/** What a form has around its file. */
const besides = 16 * 2 ** 10

/**
 * Takes forms that carry a file, on the routes of this app only. Node reads such forms by itself, as
 * browsers read them; so nothing more is needed than to hold no more of one than may come.
 */
export function takeUploads(app: FastifyInstance): void {
  app.addContentTypeParser(
    'multipart/form-data',
    async ({ headers }: FastifyRequest, payload: IncomingMessage): Promise<Upload> => {
      try {
        const body = await bodyOf(payload, mostBytes + besides)
        if (body === null) return { kind: 'too large' }
        const type = String(headers['content-type'])
        const form = await new Response(body, { headers: { 'content-type': type } }).formData()
        return { kind: 'form', form }
      } catch {
        return { kind: 'not whole' }
      }
    },
  )
}

/**
 * All of a body; null where it is longer. That is read to its end and thrown away: a browser that is
 * hung up on while it sends never reads why. A line that sends for ever is ended by its patience.
 */
async function bodyOf(payload: AsyncIterable<Buffer>, most: number): Promise<Buffer | null> {
  let chunks: Buffer[] = []
  let size = 0
  for await (const chunk of payload) {
    size += chunk.length
    if (size > most) chunks = []
    else chunks.push(chunk)
  }
  return size > most ? null : Buffer.concat(chunks)
}
