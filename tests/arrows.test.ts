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
  photos: [],
  jobs: ['knowledge', 'diagnosis', 'measure', 'store', 'web', 'drawings', 'photos'],
  // Without a complaint, from the boxes of a job's page.
  sheets: ['jobs', 'knowledge', 'diagnosis', 'measure', 'web', 'drawings'],
  // Drawn ahead for a job that nobody has opened, in the words of its pages.
  cards: ['jobs', 'knowledge', 'diagnosis', 'measure', 'web'],
  health: ['knowledge', 'diagnosis', 'web'],
  // What jobs have confirmed, and which of them count.
  rates: ['jobs', 'knowledge', 'diagnosis', 'web'],
  // The practice bench: rounds on a machine with a hidden fault, from the boxes of a job's page.
  practice: ['jobs', 'knowledge', 'diagnosis', 'measure', 'store', 'web', 'drawings'],
  // The order of the checks and why, from the boxes of a job's page and the wiring of the practice bench.
  learning: ['practice', 'jobs', 'knowledge', 'diagnosis', 'measure', 'web', 'drawings'],
  // The top of the house puts everything together.
  '': [
    ...['knowledge', 'diagnosis', 'measure', 'store', 'web', 'drawings'],
    ...['jobs', 'sheets', 'cards', 'health', 'rates', 'practice', 'learning'],
  ],
}

/** The pure rooms may use general-purpose libraries only, and none of Node's own. */
const pure = ['measure', 'diagnosis', 'practice/world', 'practice/seen']
const libraries = ['tinyqueue']

/**
 * Inside a large room, its smaller rooms from the ground up: each may import those named before it.
 * `door` stands for the files that lie in the large room itself.
 */
const floors: Readonly<Record<string, readonly string[]>> = {
  measure: ['reading', 'doubt', 'correct', 'decide', 'door', 'foresee'],
  learning: ['words', 'order', 'mistakes', 'door'],
  diagnosis: [
    'tree',
    'model',
    'rates',
    'belief',
    'plan',
    'verdict',
    'door',
    'testability',
    'outline',
  ],
  practice: [
    ...['world', 'seen', 'record', 'round', 'tool', 'page'],
    ...['after', 'opening', 'progress', 'door'],
  ],
  jobs: [
    ...['record', 'measuring', 'words', 'standing', 'posts', 'photos'],
    ...[
      'check',
      'readings',
      'over',
      'verdict',
      'beside',
      'phone',
      'page',
      'export',
      'paper',
      'meter',
      'finding',
      'opening',
      'door',
    ],
  ],
}

/** A folder with more files than this has become a warehouse. */
const mostFiles = 14

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
  return [...text.matchAll(/(?:from |import |import\()'([^']+)'/g)].map((match) => ({
    file,
    from: roomOf(file),
    to: match[1]!,
  }))
})

function roomOf(file: string): string {
  const parts = file.split(sep)
  return parts.length === 1 ? '' : parts[0]!
}

function floorOf(file: string): string {
  const [, floor, more] = file.split(sep)
  return more === undefined ? 'door' : floor!
}

/** The file that an import leads to, from `server/`; none where it leads to a library. */
const targetOf = ({ file, to }: Import): string | undefined =>
  to.startsWith('.') ? relative(server, resolve(server, dirname(file), to)) : undefined

/** Files that import each other in a circle, as the way round; none where there is no circle. */
function circle(): readonly string[] {
  const done = new Set<string>()
  const way: string[] = []
  const found = (file: string): readonly string[] | undefined => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file]
    if (done.has(file)) return undefined
    way.push(file)
    for (const each of imports.filter((each) => each.file === file)) {
      const target = targetOf(each)
      const round = target === undefined ? undefined : found(target)
      if (round !== undefined) return round
    }
    way.pop()
    done.add(file)
    return undefined
  }
  for (const file of files) {
    const round = found(file)
    if (round !== undefined) return round
  }
  return []
}

describe('the rooms of the house', () => {
  it('are all known to this table', () => {
    expect([...new Set(files.map(roomOf))].sort()).toEqual(Object.keys(below).sort())
  })

  it('import only what lies below them', () => {
    const local = imports.filter((each) => targetOf(each) !== undefined)
    expect(local.length).toBeGreaterThan(50)
    const wrong = local
      .map((each) => ({ ...each, to: roomOf(targetOf(each)!) }))
      .filter(({ from, to }) => to !== from && !below[from]!.includes(to))
    expect(wrong).toEqual([])
  })

  it('never import each other in a circle', () => {
    expect(circle()).toEqual([])
  })

  it.each(Object.entries(floors))('keep the floors of %s in order', (room, order) => {
    const own = imports.filter((each) => each.from === room)
    expect([...new Set(own.map(({ file }) => floorOf(file)))].sort()).toEqual([...order].sort())
    const upward = own.filter((each) => {
      const target = targetOf(each)
      if (target === undefined || roomOf(target) !== room) return false
      return order.indexOf(floorOf(target)) > order.indexOf(floorOf(each.file))
    })
    expect(upward).toEqual([])
  })

  it('hold no more files than one can take in at a glance', () => {
    const folders = [...new Set(files.map((file) => dirname(file)))]
    expect(folders.length).toBeGreaterThan(20)
    const inside = (folder: string) => files.filter((file) => dirname(file) === folder)
    expect(folders.filter((folder) => inside(folder).length > mostFiles)).toEqual([])
  })

  it.each(pure)('keep %s pure: no web, no database, no clock', (room) => {
    const isIn = (file: string) => file.startsWith(room.replaceAll('/', sep) + sep)
    const own = imports.filter(({ file }) => isIn(file))
    expect(own.length).toBeGreaterThan(3)
    expect(own.filter(({ to }) => !to.startsWith('.') && !libraries.includes(to))).toEqual([])
    const texts = files.filter(isIn)
    for (const file of texts) {
      const text = readFileSync(resolve(server, file), 'utf8')
      expect(text, file).not.toMatch(/Date\.now|new Date|Math\.random|process\./)
    }
  })
})
