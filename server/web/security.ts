import helmet from '@fastify/helmet'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { showError } from './errors.ts'
import { answerOwnNamesOnly } from './own-names.ts'

export interface SecurityOptions {
  /** What else than loopback names and IP addresses is answered, as `hostName` returns it. */
  readonly names: readonly string[]
}

/** Security headers on every answer, none to a name that is not ours, and no posts from other people's pages. */
export function useSecurity(app: FastifyInstance, { names }: SecurityOptions): void {
  app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    // For browsers that do not know frame-ancestors.
    xFrameOptions: { action: 'deny' },
    // Served over plain http on a workshop's own machine: a promise of https would lock people out.
    strictTransportSecurity: false,
    // With no referrer at all a browser hides the origin of our own forms from us, too.
    referrerPolicy: { policy: 'same-origin' },
  })
  answerOwnNamesOnly(app, names)
  app.addHook('onRequest', async (request, reply) => {
    if (isSafe(request) || isFromOwnPage(request)) return
    return reply.send(await showError(request, reply, otherSite))
  })
}

const otherSite = {
  status: 403,
  title: 'Not from here',
  says: 'This was sent from a page of another site, so nothing was changed.',
}

const isSafe = ({ method }: FastifyRequest): boolean => method === 'GET' || method === 'HEAD'

/**
 * Nobody signs in, so any page open in the same browser could post here unseen. Browsers say where a
 * post comes from; what says nothing is no browser. An origin equal to `Host` is ours because by now
 * `Host` is: any other has been refused.
 */
function isFromOwnPage({ headers }: FastifyRequest): boolean {
  const site = headers['sec-fetch-site']
  if (site !== undefined) return site === 'same-origin' || site === 'none'
  return headers.origin === undefined || headers.origin === `http://${headers.host}`
}
