import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { keptKnowledge } from '../../server/knowledge/kept/kept.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { emptyFolder, newFolder, removeFolder } from '../support/folder.ts'
import { shippedKnowledge, shippedTrees } from '../support/knowledge.ts'
import { readOnce } from '../support/read-once.ts'

const read = readOnce()

/** What a start on the shipped trees leaves for the next. */
let left: string
/** A copy of the shipped trees, and that file. */
let trees: string
let file: string

beforeAll(async () => {
  const folder = newFolder()
  file = join(folder, 'kept.json')
  await keptKnowledge(shippedTrees, file, read)
  left = readFileSync(file, 'utf8')
  removeFolder(folder)
})

beforeEach(() => {
  trees = join(emptyFolder(), 'trees')
  cpSync(shippedTrees, trees, { recursive: true })
  file = join(emptyFolder(), 'kept.json')
  writeFileSync(file, left)
})

/** Knowledge as a start gets it, and whether the file was made anew for it. */
async function start() {
  const fileNow = () => statSync(file, { throwIfNoEntry: false })?.ino
  const before = fileNow()
  const knowledge = await keptKnowledge(trees, file, read)
  return { knowledge, anew: fileNow() !== before }
}

function edit(name: string, from: string, to: string): void {
  const path = join(trees, name)
  const text = readFileSync(path, 'utf8')
  expect(text).toContain(from)
  writeFileSync(path, text.replace(from, to))
}

describe('knowledge that was kept', () => {
  it('is the same as what is read, and in the same order', async () => {
    const { knowledge, anew } = await start()
    expect(anew).toBe(false)
    expect(knowledge).toStrictEqual(shippedKnowledge())
    const names = ({ checkKinds, machines }: typeof knowledge) => [
      ...checkKinds.keys(),
      ...machines.keys(),
    ]
    expect(names(knowledge)).toEqual(names(shippedKnowledge()))
  })

  it('does not hang on what is written for editors', async () => {
    writeFileSync(join(trees, 'schema', 'more.json'), '{}')
    expect((await start()).anew).toBe(false)
  })

  const renamed = () => edit('machines/pedlar-1c.yaml', 'name: Pedlar 1c', 'name: Pedlar 2c')

  it('is read anew once a file has changed, and kept from then on', async () => {
    renamed()
    const first = await start()
    expect(first.anew).toBe(true)
    const second = await start()
    expect(second.anew).toBe(false)
    for (const { knowledge } of [first, second]) {
      expect(knowledge.machines.get('pedlar-1c')!.name).toBe('Pedlar 2c')
    }
  })

  it('is read anew once there is a file more', async () => {
    const copy = readFileSync(join(trees, 'meters/shop.yaml'), 'utf8')
    writeFileSync(join(trees, 'meters/spare.yaml'), copy.replace(/^id: .*/m, 'id: spare'))
    const { knowledge } = await start()
    expect([...knowledge.meters.keys()]).toContain('spare')
  })

  it('is read anew once a file has changed that a link leads to', async () => {
    const elsewhere = join(emptyFolder(), 'machines')
    renameSync(join(trees, 'machines'), elsewhere)
    symlinkSync(elsewhere, join(trees, 'machines'))
    expect((await start()).anew).toBe(false)
    renamed()
    expect((await start()).knowledge.machines.get('pedlar-1c')!.name).toBe('Pedlar 2c')
  })

  it('is no way round a mistake, and is there again once that is mended', async () => {
    const mistake = ['meters/shop.yaml', 'ranges:', 'changes:'] as const
    edit(...mistake)
    let refusal = ''
    try {
      loadKnowledge(trees)
    } catch (error) {
      refusal = String(error)
    }
    expect(refusal).toContain('meters/shop.yaml:')
    await expect(start()).rejects.toSatisfy((error) => String(error) === refusal)
    const [name, right, wrong] = mistake
    edit(name, wrong, right)
    expect((await start()).anew).toBe(false)
  })
})

describe('a file of kept knowledge', () => {
  it.each([
    ['is not there', () => rmSync(file)],
    ['is empty', () => writeFileSync(file, '')],
    ['was written by half', () => writeFileSync(file, left.slice(0, left.length / 2))],
    ['was changed', () => writeFileSync(file, left.replace('Pedlar 1c', 'Pedlar 9c'))],
  ])('that %s is made anew', async (_, spoil) => {
    spoil()
    const { knowledge, anew } = await start()
    expect(anew).toBe(true)
    expect(knowledge).toStrictEqual(shippedKnowledge())
    expect(readFileSync(file, 'utf8')).toBe(left)
    expect(readdirSync(dirname(file))).toEqual(['kept.json'])
  })

  it('that cannot be written is done without', async () => {
    rmSync(file)
    mkdirSync(file)
    expect((await start()).knowledge).toStrictEqual(shippedKnowledge())
    expect(readdirSync(dirname(file))).toEqual(['kept.json'])
  })
})
