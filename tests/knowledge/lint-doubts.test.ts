import { describe, expect, it } from 'vitest'
import { warnings } from '../../server/knowledge/lint/index.ts'
import { readTrees } from '../../server/knowledge/load.ts'
import { problemLine } from '../../server/knowledge/problems.ts'
import { changedTrees } from '../support/changed-trees.ts'
import { shippedTrees } from '../support/knowledge.ts'

const { warnedAfter } = changedTrees()

const pedlar = 'machines/pedlar-1c.yaml'

it('is doubtful of nothing that ships', () => {
  const { knowledge, locate } = readTrees(shippedTrees)
  expect(warnings(knowledge, locate).map(problemLine)).toEqual([])
})

describe('what is doubtful is said once, with file and line, and refuses nothing:', () => {
  it.each([
    [
      'a pin on the face that nobody describes',
      pedlar,
      'rows: [[1, 2, 3, 4], [5, 6, 7, null]]',
      'rows: [[1, 2, 3, 4], [5, 6, 7, 8]]',
      /pin 8 is on the face of the igniter plug and not among its pins: say what is on it/,
    ],
  ])('%s', (_, file, from, to, sentence, place = from) => {
    const { said, line } = warnedAfter(file, from, to, place)
    expect(said).toMatch(new RegExp(`^${file}:${line}: [^\n]*${sentence.source}[^\n]*$`))
  })
})
