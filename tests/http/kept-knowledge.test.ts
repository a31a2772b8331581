import { appendFileSync, cpSync, readFileSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { builtCopy, ownPackages } from '../support/built.ts'
import { emptyFolder } from '../support/folder.ts'
import { endedServer, runningServer } from '../support/server.ts'

const built = builtCopy()
const file = join(built.folder, '.build', 'knowledge.json')

/** A start and a look at the front page. */
async function started() {
  const server = await runningServer({ ...built, environment: { COILHOUND_DATA: emptyFolder() } })
  const front = await (await fetch(server.address)).text()
  await server.stop('SIGTERM')
  return { front, kept: readFileSync(file, 'utf8') }
}

it('a second start does without the library that reads YAML, until the code has changed', async () => {
  rmSync(file)
  const first = await started()
  expect(first.front).toContain('Pedlar 1c')

  // Only what tells its version is left of the library.
  ownPackages(built.folder, 'yaml')
  const yaml = ['node_modules', 'yaml', 'package.json']
  cpSync(resolve(import.meta.dirname, '../..', ...yaml), join(built.folder, ...yaml))
  const second = await started()
  expect(second).toEqual(first)

  appendFileSync(join(built.folder, '.build', 'knowledge', 'lint', 'index.js'), '\n// changed\n')
  const environment = { COILHOUND_DATA: emptyFolder(), PORT: '0' }
  const { code, complained } = await endedServer({ ...built, environment })
  expect(code).not.toBe(0)
  expect(complained).toContain('node_modules/yaml')
})
