import type { FastifyInstance, FastifyPluginAsync } from 'fastify'
import { showError } from './errors.ts'

/**
 * Refuses, for every address of the app, the methods that it does not take: with 405, a page, and the
 * header that names those it does (RFC 9110, 15.5.6). To be called before the first route is made; the
 * plugin it returns is to be registered after the last.
 */
export function otherMethods(app: FastifyInstance): FastifyPluginAsync {
  const takenAt = new Map<string, Set<string>>()
  app.addHook('onRoute', ({ url, method }) => {
    const taken = takenAt.get(url) ?? new Set()
    takenAt.set(url, taken)
    for (const each of [method].flat()) taken.add(each)
  })
  return async (scope) => {
    // The routes made here are told to the same hook.
    for (const [url, taken] of [...takenAt]) refuseOthers(scope, url, [...taken])
  }
}

function refuseOthers(scope: FastifyInstance, url: string, taken: readonly string[]): void {
  const others = scope.supportedMethods.filter((method) => !taken.includes(method))
  if (others.length === 0) return
  scope.route({
    url,
    method: others,
    // Before the body is read: whatever it is, it is not wanted.
    onRequest: async (request, reply) => {
      reply.header('Allow', taken.toSorted().join(', '))
      const here = { href: request.url, text: 'Open the page at this address' }
      return reply.send(await showError(request, reply, refusal(taken.includes('GET'), here)))
    },
    handler: () => {
      throw new Error('refused before it comes to this')
    },
  })
}

function refusal(canBeOpened: boolean, here: { href: string; text: string }) {
  const page = { status: 405, title: 'Not in this way' }
  return canBeOpened
    ? {
        ...page,
        says: 'There is a page at this address, but it cannot be used in this way.',
        wayOn: [here],
      }
    : { ...page, says: 'This address takes what a form sends, and has no page to open.' }
}
