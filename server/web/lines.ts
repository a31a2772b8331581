import type { Server } from 'node:http'
import type { Socket } from 'node:net'
import type { ConnectionError, FastifyHttpOptions } from 'fastify'

/** How long the server waits for the other end of a line, in milliseconds, before it ends the line. */
export interface Patience {
  /** For the head of a request, from the moment the line is there. */
  readonly head: number
  /** For the whole request. Not less than for its head. */
  readonly request: number
  /** For the next request on a line that is kept open. */
  readonly next: number
  /** For anything to move on a line in use, in either direction: longer than any page takes to make. */
  readonly silence: number
}

/**
 * A form here is some hundred bytes. Poor wifi in a workshop loses packets, which are sent again after
 * seconds: that is within these limits, and after 20 seconds the page itself says that nobody answers.
 */
export const usualPatience: Patience = {
  head: 15_000,
  request: 30_000,
  next: 30_000,
  silence: 60_000,
}

/**
 * Options for the lines that the server is reached on. Without limits, whoever opens many and sends a
 * byte now and then keeps everybody else out; the framework sets none for the body.
 */
export function lines({ head, request, next, silence }: Patience) {
  return {
    requestTimeout: request,
    keepAliveTimeout: next,
    connectionTimeout: silence,
    clientErrorHandler: answerUnreadable,
    http: {
      headersTimeout: head,
      requestTimeout: request,
      // How often the two above are looked at.
      connectionsCheckingInterval: Math.ceil(head / 4),
      // A missing host is refused in words, together with one that is not ours.
      requireHostHeader: false,
    },
  } satisfies FastifyHttpOptions<Server>
}

/** For what cannot be read as a request, or does not come to its end: there is no page for that. */
function answerUnreadable({ code }: ConnectionError, line: Socket): void {
  // A browser opens lines ahead, and one that it never asked anything on is closed without a word.
  const asked = line.bytesRead > 0 && code !== 'ECONNRESET'
  if (asked && line.writable) line.write(answer(refusals[code] ?? notUnderstood))
  line.destroySoon()
}

interface Refusal {
  readonly status: string
  readonly says: string
}

const notUnderstood: Refusal = {
  status: '400 Bad Request',
  says: 'The request could not be understood.',
}

const refusals: Readonly<Record<string, Refusal>> = {
  ERR_HTTP_REQUEST_TIMEOUT: {
    status: '408 Request Timeout',
    says: 'The request did not arrive in time, so nothing was taken.',
  },
  HPE_HEADER_OVERFLOW: {
    status: '431 Request Header Fields Too Large',
    says: 'The address or the headers of the request are too long.',
  },
}

const answer = ({ status, says }: Refusal): string =>
  [
    `HTTP/1.1 ${status}`,
    'Connection: close',
    'Content-Type: text/plain; charset=utf-8',
    `Content-Length: ${says.length + 1}`,
    '',
    `${says}\n`,
  ].join('\r\n')
