import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll } from 'vitest'
import type { Run } from './server.ts'

const project = resolve(import.meta.dirname, '../..')

/** What `npm start` runs, in a copy that a test may spoil; built once for the tests of a file. */
export function builtCopy(): Required<Pick<Run, 'folder' | 'arguments'>> {
  const folder = mkdtempSync(join(tmpdir(), 'coilhound-built-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  for (const each of ['server', 'views', 'static', 'trees', 'package.json', 'tsconfig.json']) {
    cpSync(join(project, each), join(folder, each), { recursive: true })
  }
  symlinkSync(join(project, 'node_modules'), join(folder, 'node_modules'))
  const compile = ['node_modules/typescript/bin/tsc', '-p', 'server']
  execFileSync(process.execPath, compile, { cwd: folder })
  return { folder, arguments: ['.build/main.js'] }
}

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
