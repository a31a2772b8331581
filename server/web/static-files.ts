import { basename, dirname } from 'node:path'
import fastifyStatic from '@fastify/static'
import type { FastifyInstance, FastifyReply } from 'fastify'
import { htmxPath, staticPrefix, stylePath, type Versions } from './assets.ts'
import { htmxFile, staticFolder } from './folders.ts'
import { stylesheet } from './stylesheet.ts'

export interface StaticOptions {
  readonly versions: Versions
}

/** Serves `static/`, the stylesheet joined from its rooms, and htmx. Compression must be registered before it. */
export async function staticFiles(
  app: FastifyInstance,
  { versions }: StaticOptions,
): Promise<void> {
  app.register(fastifyStatic, {
    root: staticFolder,
    prefix: staticPrefix,
    index: false,
    dotfiles: 'ignore',
    cacheControl: false,
    setHeaders: (reply) => reply.header('cache-control', howLong(reply.request, versions)),
  })
  const style = stylesheet()
  app.get(stylePath, (request, reply) =>
    reply
      .header('cache-control', howLong(request, versions))
      .type('text/css; charset=utf-8')
      .send(style),
  )
  app.get(htmxPath, (_request, reply) => reply.sendFile(basename(htmxFile), dirname(htmxFile)))
}

/** For ever where the address carries the file's own version; otherwise ask again each time. */
function howLong({ url }: FastifyReply['request'], versions: Versions): string {
  const { pathname, searchParams } = new URL(url, 'http://any')
  const version = versions.get(pathname)
  const own = version !== undefined && searchParams.get('v') === version
  return own ? 'public, max-age=31536000, immutable' : 'no-cache'
}
