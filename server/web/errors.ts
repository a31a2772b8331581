import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { type FieldWords, type Kept, keptFrom } from './kept.ts'
import { asksForFragment, neverKeep } from './page.ts'

/** A page that says what went wrong and where to go from there: `errors/show`. */
export interface ErrorPage {
  readonly status: number
  readonly title: string
  readonly says: string
  /** What was sent and not recorded. */
  readonly kept?: Kept | undefined
  readonly wayOn: readonly WayOn[]
}

/** What an error page says of itself. */
export type ErrorText = Pick<ErrorPage, 'status' | 'title' | 'says'>

export interface WayOn {
  readonly href: string
  readonly text: string
}

const frontPage: WayOn = { href: '/', text: 'Go to the front page' }

/** Answers with an error page; from a fragment's request it takes the place of the whole page. */
export async function showError(
  request: FastifyRequest,
  reply: FastifyReply,
  { wayOn = [], ...page }: Omit<ErrorPage, 'wayOn'> & Partial<Pick<ErrorPage, 'wayOn'>>,
): Promise<string> {
  neverKeep(reply)
  if (asksForFragment(request)) reply.header('HX-Retarget', 'body').header('HX-Reswap', 'innerHTML')
  const model: ErrorPage = { ...page, wayOn: [...wayOn, frontPage] }
  return reply.code(page.status).viewAsync('errors/show', model)
}

export interface ErrorOptions {
  /** What to say of an error that a person can do something about; nothing for any other. */
  readonly textOf: (error: unknown) => ErrorText | undefined
  readonly fieldWords: FieldWords
}

/** Pages for what the framework refuses, for addresses that lead nowhere, and for what went wrong. */
export function useErrorPages(app: FastifyInstance, { textOf, fieldWords }: ErrorOptions): void {
  app.setNotFoundHandler((request, reply) =>
    showError(request, reply, refusal(request.url === unreadable ? 400 : 404)),
  )
  app.setErrorHandler<FastifyError>(async (error, request, reply) => {
    const status = error.statusCode ?? 500
    if (status === 413 && asksForFragment(request)) return showAbove(reply)
    if (status >= 400 && status < 500) return showError(request, reply, refusal(status))
    request.log.error(
      { err: error, job: jobOf(request) },
      `${request.method} ${request.url} failed`,
    )
    const text = textOf(error) ?? ourMistake
    return showError(request, reply, { ...text, kept: keptFrom(request, fieldWords) })
  })
}

/** Stands for an address that cannot be decoded. With its space, no address that is sent is like it. */
const unreadable = '/not readable'

/**
 * For an address that cannot even be decoded. The framework refuses it before any hook has run, so it
 * is asked for once more in other words: then it passes all that others pass, and gets what they get.
 */
export function routeUnreadable(
  app: FastifyInstance,
  { raw }: FastifyRequest,
  reply: FastifyReply,
) {
  raw.url = unreadable
  app.routing(raw, reply.raw)
}

/** What to say for what the framework refuses by itself. */
const refusals: Readonly<Record<number, Omit<ErrorPage, 'status' | 'wayOn'>>> = {
  404: { title: 'Nothing here', says: 'There is no page at this address.' },
  413: {
    title: 'Too much at once',
    says: 'That was longer than any field here can take, so nothing was taken. Go back in the browser and type less: a note has room for some sentences.',
  },
  415: { title: 'Not a form', says: 'Only the forms of these pages are taken here.' },
}

function refusal(status: number) {
  const known = refusals[status]
  if (known !== undefined) return { status, ...known }
  return { status, title: 'Not understood', says: 'The request could not be understood.' }
}

/**
 * Nobody reads what is longer than any form, so it cannot be sent back: a script leaves the form as it stands, with what
 * was typed, and puts the sentence above it.
 */
function showAbove(reply: FastifyReply): Promise<string> {
  neverKeep(reply)
  reply.header('HX-Retarget', '#job').header('HX-Reswap', 'afterbegin')
  return reply.code(413).viewAsync('errors/_above', { says: tooMuchHere })
}

const tooMuchHere =
  'That was longer than any field here can take, so nothing was taken. Make it shorter, and send it again.'

const ourMistake = {
  status: 500,
  title: 'Our mistake',
  says: 'Something went wrong on our side. What was recorded before is safe; please try again.',
}

function jobOf({ params }: FastifyRequest): string | undefined {
  return (params as { id?: string }).id
}
