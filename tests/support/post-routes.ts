import type { FastifyInstance } from 'fastify'
import type { Http } from './app.ts'

/** The paths that take a post, as the app itself says: `/jobs/:id/readings`. */
export async function postRoutes(app: FastifyInstance, http: Http): Promise<string[]> {
  const paths = pathsIn(app.printRoutes({ commonPrefix: false }))
  const taking = await Promise.all(
    // No path takes this method, so each says which it takes.
    paths.map(async (path) => (await http.trace(path)).headers.allow?.includes('POST')),
  )
  return paths.filter((_, i) => taking[i])
}

/** The framework prints a tree: four columns a level, and on each line what is added to the line above it. */
function pathsIn(tree: string): string[] {
  const above: string[] = []
  return tree.split('\n').flatMap((line) => {
    const [, indent = '', piece = ''] = /^(.*?[├└]── )(\S+) \(/.exec(line) ?? []
    if (piece === '') return []
    const level = indent.length / 4 - 1
    above.length = level
    above.push(piece)
    return above.join('').replace('//', '/')
  })
}
