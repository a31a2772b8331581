import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, readdirSync, rmSync, symlinkSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { afterAll, inject } from 'vitest'
import { newFolder, removeFolder } from './folder.ts'
import type { Run } from './server.ts'

const project = resolve(import.meta.dirname, '../..')

/** What `npm start` runs after a first start, in a copy that a test may spoil; gone after the tests of a file. */
export function builtCopy(): Required<Pick<Run, 'folder' | 'arguments'>> {
  const folder = newFolder()
  afterAll(() => removeFolder(folder))
  built ??= build()
  cpSync(built, folder, { recursive: true })
  symlinkSync(join(project, 'node_modules'), join(folder, 'node_modules'))
  return { folder, arguments: ['.build/main.js'] }
}

/** Where it was built for all tests of a project, without the packages. */
let built: string | undefined

function build(): string {
  const folder = join(inject('shared'), 'built')
  for (const each of ['server', 'views', 'static', 'trees', 'package.json', 'tsconfig.json']) {
    cpSync(join(project, each), join(folder, each), { recursive: true })
  }
  const packages = join(folder, 'node_modules')
  symlinkSync(join(project, 'node_modules'), packages)
  const run = (...words: string[]) => execFileSync(process.execPath, words, { cwd: folder })
  run('node_modules/typescript/bin/tsc', '-p', 'server')
  run('--input-type=module', '--eval', keepKnowledge)
  rmSync(packages)
  return folder
}

/** What a first start keeps for the next ones. */
const keepKnowledge = `
  const { keptKnowledge } = await import('./.build/knowledge/kept/kept.js')
  await keptKnowledge('trees', '.build/knowledge.json')`

/** Gives a built copy its own folder of packages, in which all but one are the project's. */
export function ownPackages(folder: string, allBut: string): void {
  const shared = join(project, 'node_modules')
  const own = join(folder, 'node_modules')
  rmSync(own, { recursive: true })
  mkdirSync(own)
  for (const each of readdirSync(shared)) {
    if (each !== allBut) symlinkSync(join(shared, each), join(own, each))
  }
}
