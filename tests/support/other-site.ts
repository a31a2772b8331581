import { createServer } from 'node:http'
import { onTestFinished } from 'vitest'

/** A site of somebody else on this computer, at a port of its own: every address shows this page. */
export async function otherSite(page: string): Promise<string> {
  const server = createServer((_request, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8').end(page)
  })
  onTestFinished(() => {
    server.close()
    server.closeAllConnections()
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  const { port } = server.address() as { port: number }
  return `http://127.0.0.1:${port}`
}
