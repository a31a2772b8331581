import type { IncomingMessage } from 'node:http'
import { isIP, isIPv6 } from 'node:net'
import { domainToASCII } from 'node:url'
import type { FastifyInstance } from 'fastify'

/**
 * Answers only requests for an IP address, a loopback name or one of these names, before anything
 * else is done with them.
 *
 * A page of any site can have its own name point to this computer, and to the browser what it asks of
 * us then comes from its own site. But that name stands in `Host`, and no page can change it; where an
 * address stands there, the address itself was opened, and no name was looked up.
 *
 * @param names as `hostName` returns them
 */
export function answerOwnNamesOnly(app: FastifyInstance, names: readonly string[]): void {
  app.addHook('onRequest', async (request, reply) => {
    const host = hostOf(request.raw)
    if (host !== undefined && isOwn(host, names)) return
    // Without a page: it could not load its style under this name either. RFC 9112, 3.2 asks for 400
    // where there is not one valid host; RFC 9110, 15.5.20 has 421 for one that is not answered for.
    reply.code(host === undefined ? 400 : 421).header('cache-control', 'no-store')
    return reply.type('text/plain; charset=utf-8').send(`${refusal(host)}\n`)
  })
}

/**
 * A name as browsers write it into `Host`: in ASCII and small letters, without a dot at the end.
 *
 * @returns undefined where the text is no name of a host, or more than that
 */
export function hostName(text: string): string | undefined {
  return plainName(domainToASCII(text))
}

/** The host that the request is for; undefined where it names none, several, or what is no host. */
function hostOf({ headersDistinct, url = '' }: IncomingMessage): string | undefined {
  const [host = '', ...more] = headersDistinct.host ?? []
  // A whole URL in the first line says the same once more (RFC 9112, 3.2). No proxy's word counts.
  const inUrl = /^https?:\/\/([^/?#]*)/i.exec(url)?.[1] ?? host
  if (more.length > 0 || inUrl.toLowerCase() !== host.toLowerCase()) return undefined
  const [, bracketed, other = ''] = /^(?:\[(.+)\]|([^:]+))(?::\d*)?$/.exec(host) ?? []
  if (bracketed !== undefined) return isIPv6(bracketed) ? bracketed : undefined
  return plainName(other)
}

function plainName(text: string): string | undefined {
  const name = text.toLowerCase().replace(/\.$/, '')
  return /^[a-z0-9_-]+(\.[a-z0-9_-]+)*$/.test(name) ? name : undefined
}

function isOwn(host: string, names: readonly string[]): boolean {
  if (isIP(host) !== 0) return true
  return host === 'localhost' || host.endsWith('.localhost') || names.includes(host)
}

const refusal = (host: string | undefined): string =>
  host === undefined
    ? 'The request does not say in one Host header which server it is for.'
    : `Coilhound does not answer to the name ${host}: open it by its IP address, or start it with ${host} among the names in COILHOUND_NAMES.`
