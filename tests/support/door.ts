import { createServer, type Server, type Socket } from 'node:net'
import type { FastifyInstance } from 'fastify'

/** One address for all apps of a process, one after the other: whatever stands at it can stay there. */
export interface Door {
  /** Without a slash at the end. */
  readonly address: string
  /** Lets this app answer from now on. What is returned closes every line to it. */
  leadTo(app: FastifyInstance): () => void
}

/** @throws Error where two apps want to answer at once. */
export async function openDoor(): Promise<Door> {
  const lines = new Set<Socket>()
  let inside: FastifyInstance | undefined
  const server = createServer((line) => {
    lines.add(line)
    line.on('close', () => lines.delete(line))
    if (inside === undefined) line.destroy()
    else inside.server.emit('connection', line)
  })
  const port = await portOf(server)
  return {
    address: `http://127.0.0.1:${port}`,
    leadTo: (app) => {
      if (inside !== undefined) throw new Error('Another app still answers at this door.')
      inside = app
      return () => {
        inside = undefined
        for (const line of lines) line.destroy()
      }
    },
  }
}

function portOf(server: Server): Promise<number> {
  // It is there for as long as the process, and keeps none from ending.
  server.unref()
  return new Promise((listening) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      if (address !== null && typeof address === 'object') listening(address.port)
    })
  })
}
