import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { staticFolder } from '../../server/web/folders.ts'
import { stylesheet } from '../../server/web/stylesheet.ts'

it('joins every file of the style folder, each once', () => {
  const joined = stylesheet()
  const files = readdirSync(join(staticFolder, 'style'))
  expect(files.length).toBeGreaterThan(10)
  for (const file of files) {
    const rules = readFileSync(join(staticFolder, 'style', file), 'utf8')
    expect(joined.split(rules), file).toHaveLength(2)
  }
})
