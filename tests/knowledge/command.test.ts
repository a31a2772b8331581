import { execFileSync } from 'node:child_process'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { changedTrees } from '../support/changed-trees.ts'

const { actAfter } = changedTrees()

const project = resolve(import.meta.dirname, '../..')
const command = ['--import', 'tsx', 'server/knowledge/command.ts']

/** What the command prints; it throws where the command ends with anything but 0. */
const lintOf = (folder: string): string =>
  execFileSync(process.execPath, [...command, 'lint', folder], { cwd: project, encoding: 'utf8' })

it('prints where to look, and finds the knowledge sound none the less', () => {
  const change = ['machines/pedlar-1c.yaml', 'copper: 0.62', 'copper: 0.26'] as const
  const [look, sound] = actAfter(change, lintOf).split('\n')
  expect(look).toMatch(/^look at machines\/pedlar-1c\.yaml:\d+: coil: copper is 0\.26, and /)
  expect(sound).toMatch(/^knowledge is sound: \d+ complaints/)
})
