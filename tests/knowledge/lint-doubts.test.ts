import { describe, expect, it } from 'vitest'
import { warnings } from '../../server/knowledge/lint/index.ts'
import { readTrees } from '../../server/knowledge/load.ts'
import { problemLine } from '../../server/knowledge/problems.ts'
import { changedTrees } from '../support/changed-trees.ts'
import { shippedTrees } from '../support/knowledge.ts'

const { warnedAfter } = changedTrees()

const larkfell = 'machines/larkfell-2i.yaml'
const pedlar = 'machines/pedlar-1c.yaml'
const runExciter = '- at: igniter-plug\n        pins: [3, 2]\n        for: [resistance]\n        '

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
    [
      'a wire of two colours',
      pedlar,
      "'5': { wire: [OG], to: 'ignition coil, pulse' }",
      "'5': { wire: [GN], to: 'ignition coil, pulse' }",
      /a wire of the coil wiring is GN here, at pin 5 of the igniter plug, and OG at pin 1 of the coil plug/,
    ],
    [
      'a wire of two colours that is second in the words of its place',
      pedlar,
      "'6': { wire: [OG, BK], to: 'ignition coil, return' }",
      "'6': { wire: [OG, WH], to: 'ignition coil, return' }",
      /is OG\/WH here, at pin 6 of the igniter plug, and OG\/BK at pin 2 of the coil plug/,
    ],
    [
      'a single wire of two colours, at a half of a plug',
      pedlar,
      "'1': { wire: [WH], to: stop switch and tether }",
      "'1': { wire: [BK], to: stop switch and tether }",
      /a wire of the stop wiring is BK here, at pin 1 of the stop plug, and WH at pin 1 of the stop switch plug/,
    ],
    [
      'a path that is forgotten in one of the readings at a pin',
      pedlar,
      '- { at: igniter-plug, pins: [1, ground], for: [isolation], through: [wires-exciter] }',
      '- { at: igniter-plug, pins: [1, ground], for: [isolation] }',
      /exciter: at the same pin of the igniter plug another reading goes through wires-exciter: name it/,
    ],
    [
      'a path that is forgotten in the only reading there',
      larkfell,
      '- { at: injection-plug, pins: [5, 6], for: [resistance], through: [wires-pump] }',
      '- { at: injection-plug, pins: [5, 6], for: [resistance] }',
      /pump: it is read at the injection plug and at the pump plug, and wires-pump lies between them/,
    ],
    [
      'one wire of several that is forgotten, by its pin',
      larkfell,
      `${runExciter}through: [wires-exciter-run, wires-exciter-shared]`,
      `${runExciter}through: [wires-exciter-run]`,
      /exciter-run: at the same pin of the igniter plug another reading goes through wires-exciter-shared/,
    ],
    [
      'volts without what drives them',
      pedlar,
      'for: [ac-voltage], through: [wires-lighting, flywheel]',
      'for: [ac-voltage], through: [wires-lighting]',
      /lighting: without the flywheel there is no ac-voltage: name flywheel in through/,
    ],
  ])('%s', (_, file, from, to, sentence, place = from) => {
    const { said, line } = warnedAfter(file, from, to, place)
    expect(said).toMatch(new RegExp(`^${file}:${line}: [^\n]*${sentence.source}[^\n]*$`))
  })
})
