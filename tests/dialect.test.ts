import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { parse } from 'yaml'
import { shippedTrees } from './support/knowledge.ts'

const project = resolve(shippedTrees, '..')

/** American words and spellings, and "earth": pages are British, but for the trade's own "ground". */
const notOurs =
  /\b(earth(ed|ing)?|(?<!torque )wrench(es)?|flashlights?|gasoline|gas tank|hood|fender|muffler|colors?|gray|center(ed)?|aluminum|carburetor|tires?|burned|behavior|neighbor)\b/i

/** Every sentence of the trees, the templates, the guide for users and the strings of the server. */
function texts(): { readonly file: string; readonly text: string }[] {
  const inFolder = (folder: string, ending: string) =>
    readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith(ending))
      .map((file) => join(folder, file))
  const read = (file: string) => readFileSync(join(project, file), 'utf8')
  return [
    ...inFolder('trees', '.yaml').flatMap((file) =>
      stringsIn(parse(read(file))).map((text) => ({ file, text })),
    ),
    ...[...inFolder('views', '.eta'), 'README.md'].map((file) => ({
      file,
      text: read(file).replaceAll(/<[^>]*>/g, ' '),
    })),
    ...inFolder('server', '.ts').flatMap((file) =>
      [...read(file).matchAll(/'([^'\n]* [^'\n]*)'|`([^`]* [^`]*)`/g)].map(([text]) => ({
        file,
        text,
      })),
    ),
  ]
}

/** Strings with a space in them; names have none. */
function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return value.includes(' ') ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(stringsIn)
}

it('is British, and has ground where that says earth', () => {
  const all = texts()
  expect(all.length).toBeGreaterThan(2000)
  expect(all.some(({ text }) => /\bspanner\b/.test(text))).toBe(true)
  expect(all.filter(({ text }) => notOurs.test(text))).toEqual([])
})
