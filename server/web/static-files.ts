import type { FastifyInstance } from 'fastify'
import type { Assets } from './assets.ts'
import { textOf } from './fields.ts'

export interface StaticOptions {
  readonly assets: Assets
}

/** Serves what pages load, from memory. Compression must be registered before it. */
export async function staticFiles(app: FastifyInstance, { assets }: StaticOptions): Promise<void> {
  for (const [path, { content, type, version }] of assets) {
    app.get(path, (request, reply) => {
      const own = textOf(request.query, 'v') === version
      return reply
        .type(type)
        .header('cache-control', own ? forEver : askAgain)
        .send(content)
    })
  }
}

const forEver = 'public, max-age=31536000, immutable'
const askAgain = 'no-cache'
