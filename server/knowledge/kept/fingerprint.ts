import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, resolve } from 'node:path'

/** `server/`, or what was built of it. */
const server = resolve(import.meta.dirname, '..', '..')
/** The rooms whose code says how trees are read and what is refused. */
const rooms = ['knowledge', 'measure', 'diagnosis']

const requireHere = createRequire(import.meta.url)
/** What reads trees besides, by the files that tell versions. */
const libraries = ['yaml', 'zod'].map((name) => requireHere.resolve(`${name}/package.json`))

/**
 * One hash of all that decides what is known: names and contents of the files below the folder of
 * trees, but for what is written there for editors, and of the code that reads and lints them. Takes
 * some 25 ms.
 *
 * @returns null where something there cannot be read
 */
export function fingerprint(trees: string): string | null {
  const hash = createHash('sha256')
  const add = (folder: string, name: string) => {
    const content = readFileSync(join(folder, name))
    hash.update(`${name}\n${content.length}\n`).update(content)
  }
  try {
    for (const file of filesBelow(trees)) if (!file.startsWith('schema/')) add(trees, file)
    for (const room of rooms) for (const file of filesBelow(server, room)) add(server, file)
    for (const file of libraries) add(dirname(file), 'package.json')
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null
    throw error
  }
  return hash.digest('hex')
}

/** Their paths from the folder. Follows links, or what is read through one would escape the hash. */
function filesBelow(folder: string, below = ''): string[] {
  const names = readdirSync(join(folder, below)).sort()
  return names.flatMap((name) => {
    const path = below === '' ? name : `${below}/${name}`
    return statSync(join(folder, path)).isDirectory() ? filesBelow(folder, path) : [path]
  })
}
