import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect } from 'vitest'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { warnings } from '../../server/knowledge/lint/index.ts'
import { loadKnowledge, readTrees } from '../../server/knowledge/load.ts'
import { problemLine } from '../../server/knowledge/problems.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { newFolder, removeFolder } from './folder.ts'
import { shippedTrees } from './knowledge.ts'
import { readOnce } from './read-once.ts'

/** One text in one file that is replaced. */
export type Change = readonly [file: string, from: string, to: string]

/** What is said, and the line on which a place stands in the file as it ships. */
interface Said {
  readonly said: string
  readonly line: number
}

interface Warned {
  readonly said: readonly string[]
  readonly alone: readonly string[]
  readonly line: number
}

/** The trees that ship, in a folder of their own, to be changed in one place and read again. */
export function changedTrees() {
  let folder: string
  const read = readOnce()
  beforeAll(() => {
    folder = newFolder()
    cpSync(shippedTrees, folder, { recursive: true })
  })
  afterAll(() => removeFolder(folder))

  function after<T>([file, from, to]: Change, act: (before: string) => T): T {
    const path = join(folder, file)
    const before = readFileSync(path, 'utf8')
    // Without this a text that is no longer in the file would leave the test testing nothing.
    expect(before.indexOf(from), `"${from}" in ${file}`).toBeGreaterThanOrEqual(0)
    writeFileSync(path, before.replace(from, to))
    try {
      return act(before)
    } finally {
      writeFileSync(path, before)
    }
  }

  return {
    /** What comes of an act on the folder after such a change. */
    actAfter: <T>(change: Change, act: (folder: string) => T): T =>
      after(change, () => act(folder)),

    /** What loading refuses when one text in one file is replaced. */
    saidAfter: (file: string, from: string, to: string, place = from): Said =>
      after([file, from, to], (before) => {
        try {
          loadKnowledge(folder, quantities, read)
          return { said: '', line: 0 }
        } catch (error) {
          return { said: (error as Error).message, line: lineOf(before, place) }
        }
      }),

    /**
     * What is warned of after such a change, should nothing be refused; and what where the sheet that was
     * changed is the only one; but for complaints that the fewer machines leave unused.
     */
    warnedAfter: (file: string, from: string, to: string): Warned =>
      after([file, from, to], (before) => {
        const { knowledge, locate } = readTrees(folder, quantities, read)
        const said = (sheets: Knowledge['machines']) =>
          warnings({ ...knowledge, machines: sheets }, locate)
            .filter(({ file }) => !file.startsWith('complaints/'))
            .map(problemLine)
        const own = [...knowledge.machines].filter(([id]) => file === `machines/${id}.yaml`)
        return {
          said: said(knowledge.machines),
          alone: said(new Map(own)),
          line: lineOf(before, from),
        }
      }),
  }
}

const lineOf = (text: string, place: string): number =>
  text.slice(0, text.indexOf(place)).split('\n').length
