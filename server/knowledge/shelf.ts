import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { z } from 'zod'
import type { Locate, Problem } from './knowledge.ts'
import type { readYaml, YamlFile } from './yaml-file.ts'

/** Reads files of knowledge one after another and gathers what is wrong with them. */
export class Shelf {
  readonly problems: Problem[] = []
  readonly #folder: string
  readonly #read: typeof readYaml
  readonly #fileOf = new Map<object, YamlFile>()

  constructor(folder: string, read: typeof readYaml) {
    this.#folder = folder
    this.#read = read
  }

  /** Every entry of a folder by its name. A file is called as its entry, so that it is found without a search. */
  entries<S extends z.ZodType<object>>(
    name: string,
    schema: S,
    nameOf: (entry: z.output<S>) => string,
  ): Map<string, z.output<S>> {
    const found = this.anyEntries(name, schema, nameOf)
    if (found.size === 0 && this.#filesIn(name).length === 0) {
      const says = 'this folder is missing or holds no .yaml file'
      this.problems.push({ file: name, line: 1, says })
    }
    return found
  }

  /** The same of a folder that may be missing or empty. */
  anyEntries<S extends z.ZodType<object>>(
    name: string,
    schema: S,
    nameOf: (entry: z.output<S>) => string,
  ): Map<string, z.output<S>> {
    const found = new Map<string, z.output<S>>()
    for (const path of this.#filesIn(name)) {
      const entry = this.table(path, schema)
      if (entry === null) continue
      if (path !== `${name}/${nameOf(entry)}.yaml`) {
        const says = `this file holds ${nameOf(entry)}, so call it ${nameOf(entry)}.yaml`
        this.problems.push({ file: path, line: 1, says })
      }
      found.set(nameOf(entry), entry)
    }
    return found
  }

  /** One file that is one entry; null if something is wrong with it, which `problems` then tells. */
  table<S extends z.ZodType<object>>(path: string, schema: S): z.output<S> | null {
    const text = textOf(join(this.#folder, path))
    if (text === null) {
      this.problems.push({ file: path, line: 1, says: 'this file is missing or cannot be read' })
      return null
    }
    const file = this.#read(path, text, schema)
    this.problems.push(...file.problems)
    if (file.value !== null) this.#fileOf.set(file.value, file)
    return file.value as z.output<S> | null
  }

  /** What was made of an entry is found where that stands. */
  standsFor(entry: object, made: object): void {
    const file = this.#fileOf.get(entry)
    if (file !== undefined) this.#fileOf.set(made, file)
  }

  readonly locate: Locate = (entry, path) => {
    const file = this.#fileOf.get(entry)
    if (file === undefined) throw new RangeError('this entry was not read from a file')
    return { file: file.file, line: file.lineOf(path) }
  }

  #filesIn(name: string): string[] {
    try {
      const files = readdirSync(join(this.#folder, name)).filter((file) => file.endsWith('.yaml'))
      return files.sort().map((file) => `${name}/${file}`)
    } catch (error) {
      if (error instanceof Error && 'code' in error) return []
      throw error
    }
  }
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null
    throw error
  }
}
