import { readdirSync, readFileSync } from 'node:fs'
import { dirname, relative, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'

const server = resolve(import.meta.dirname, '../server')

/** Who may import whom: a room, and the rooms below it. Every room may import its own files. */
const below: Readonly<Record<string, readonly string[]>> = {
  measure: [],
  diagnosis: [],
  knowledge: ['diagnosis', 'measure'],
  store: [],
  web: [],
  drawings: [],
  jobs: ['knowledge', 'diagnosis', 'measure', 'store', 'web', 'drawings'],
  health: ['knowledge', 'diagnosis', 'web'],
  // The top of the house puts everything together.
  '': ['knowledge', 'diagnosis', 'measure', 'store', 'web', 'drawings', 'jobs', 'health'],
}

/** The pure rooms may use general-purpose libraries only, and none of Node's own. */
const pure = ['measure', 'diagnosis']

interface Import {
  readonly file: string
  readonly from: string
  readonly to: string
}

const files = readdirSync(server, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.ts'),
)
const imports = files.flatMap((file): Import[] => {
  const text = readFileSync(resolve(server, file), 'utf8')
  return [...text.matchAll(/(?:from|import) '([^']+)'/g)].map((match) => ({
    file,
    from: roomOf(file),
    to: match[1]!,
  }))
})

function roomOf(file: string): string {
  const parts = file.split(sep)
  return parts.length === 1 ? '' : parts[0]!
}

describe('the rooms of the house', () => {
  it('are all known to this table', () => {
    expect([...new Set(files.map(roomOf))].sort()).toEqual(Object.keys(below).sort())
  })

  it('import only what lies below them', () => {
    const local = imports.filter(({ to }) => to.startsWith('.'))
    expect(local.length).toBeGreaterThan(50)
    const wrong = local
      .map(({ file, from, to }) => ({
        file,
        from,
        to: roomOf(relative(server, resolve(dirname(resolve(server, file)), to))),
      }))
      .filter(({ from, to }) => to !== from && !below[from]!.includes(to))
    expect(wrong).toEqual([])
  })

  it.each(pure)('keep %s pure: no web, no database, no clock', (room) => {
    const own = imports.filter(({ from }) => from === room)
    expect(own.length).toBeGreaterThan(3)
    expect(own.filter(({ to }) => !to.startsWith('.'))).toEqual([])
    const texts = files.filter((file) => roomOf(file) === room)
    for (const file of texts) {
      const text = readFileSync(resolve(server, file), 'utf8')
      expect(text, file).not.toMatch(/Date\.now|new Date|Math\.random|process\./)
    }
  })
})
