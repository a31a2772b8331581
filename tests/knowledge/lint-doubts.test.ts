import { describe, expect, it } from 'vitest'
import { warnings } from '../../server/knowledge/lint/index.ts'
import { soundTrees } from '../../server/knowledge/load.ts'
import { problemLine } from '../../server/knowledge/problems.ts'
import { changedTrees } from '../support/changed-trees.ts'
import { shippedTrees } from '../support/knowledge.ts'

const { saidAfter, warnedAfter } = changedTrees()

const larkfell = 'machines/larkfell-2i.yaml'
const pedlar = 'machines/pedlar-1c.yaml'
const runExciter = '- at: igniter-plug\n        pins: [3, 2]\n        for: [resistance]\n        '

it('is doubtful of nothing that ships', () => {
  const { knowledge, locate } = soundTrees(shippedTrees)
  expect(warnings(knowledge, locate).map(problemLine)).toEqual([])
})

describe('what is doubtful is said once, with file and line:', () => {
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
      'a part on the way that shows in nothing there',
      'machines/fernslade-1p.yaml',
      'for: [opening] }',
      'for: [opening], through: [work-lamp] }',
      /points: nothing that is wrong with work-lamp shows in opening or opening-angle: leave it out of through/,
    ],
    [
      'a gap in hundredths instead of millimetres',
      'machines/clipwell-1m.yaml',
      'air-gap: { low: 0.25 mm, high: 0.4 mm',
      'air-gap: { low: 0.25 mm, high: 40 mm',
      /module-seat: high, 40 mm, is far above what such a part has, 0\.15\smm to 0\.6\smm by parts\/module-seat\.yaml/,
    ],
    [
      'degrees before the top that are not the millimetres',
      'machines/fernslade-1p.yaml',
      '      opening: { low: 1.8 mm, high: 2.6 mm,',
      '      opening-angle: { low: 19.7°, high: 27°, source: invented }\n      opening: { low: 1.8 mm, high: 2.6 mm,',
      /points: the high limit of opening-angle, 27°, is not that of opening, 2\.6 mm: with this crank that is 23\.7°/,
    ],
    [
      'a rod as long as the whole engine',
      'machines/fernslade-1p.yaml',
      'rod: 92 mm',
      'rod: 192 mm',
      /a rod of 192 mm is 3\.9 strokes of 49 mm, and rods are 1\.2 to 3/,
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
    [
      'ohms with the prefix of other ohms',
      pedlar,
      'low: 210 Ω, high: 290 Ω, source',
      'low: 210 Ω, high: 290 kΩ, source',
      /exciter: high, 290 kΩ, is far above what such a part has, 3\sΩ to 1\skΩ by parts\/winding\.yaml:\d+: check/,
    ],
    [
      'a limit that is common for another part of the same kind',
      pedlar,
      'resistance: { low: 0.42 Ω, high: 0.62 Ω',
      'resistance: { low: 0.42 Ω, high: 62 Ω',
      /lighting: high, 62 Ω, is far above what such a part has, 0\.1\sΩ to 1\sΩ by parts/,
    ],
    [
      'a warm limit that copper does not reach from the cold one',
      pedlar,
      'warmed-resistance: { low: 260 Ω, high: 358 Ω',
      'warmed-resistance: { low: 260 Ω, high: 385 Ω',
      /exciter: the high limit of warmed-resistance, 385 Ω, is not that of resistance, 290 Ω: copper reads 358\.4\sΩ at 80 °C/,
    ],
    [
      'a hot limit that refuses a good winding once it is cold',
      pedlar,
      'hot-resistance: { low: 210 Ω, high: 393 Ω',
      'hot-resistance: { low: 260 Ω, high: 393 Ω',
      /exciter: the limits of hot-resistance, 260\sΩ to 393\sΩ, must hold those of resistance, 210\sΩ to 290\sΩ/,
    ],
    [
      'a secondary through its cap that is not the sum of the two',
      pedlar,
      'through-cap-resistance: { low: 9 kΩ, high: 12.2 kΩ',
      'through-cap-resistance: { low: 9 kΩ, high: 10.2 kΩ',
      /coil: through-cap-resistance is 9\skΩ to 10\.2\skΩ, and secondary-resistance with lead and cap comes to 9\skΩ to 12\.2\d*\skΩ/,
    ],
    [
      'a secondary through its cap that lets bad caps pass',
      pedlar,
      'through-cap-resistance: { low: 9 kΩ, high: 12.2 kΩ',
      'through-cap-resistance: { low: 9 kΩ, high: 22.2 kΩ',
      /coil: through-cap-resistance is 9\skΩ to 22\.2\skΩ, and secondary-resistance with lead and cap comes/,
    ],
    [
      'a share of copper that the secondary has not',
      pedlar,
      'copper: 0.62',
      'copper: 0.26',
      /coil: copper is 0\.26, and secondary-resistance is 0\.62 of what is read/,
    ],
    [
      'a pump that gets less of the volts than the winding keeps',
      larkfell,
      'resistance: { low: 5 Ω, high: 7 Ω',
      'resistance: { low: 0.9 Ω, high: 1.5 Ω',
      /pump: its 0\.9\sΩ to 1\.5\sΩ behind the 2\.4\sΩ to 3\.4\sΩ of pump-winding get 38 % of the volts at best/,
    ],
  ])('%s', (_, file, from, to, sentence) => {
    const { said, alone, line } = warnedAfter(file, from, to)
    const whole = new RegExp(`^${file}:${line}: .*${sentence.source}`)
    expect(
      said.filter((each) => whole.test(each)),
      said.join('\n'),
    ).toHaveLength(1)
    // A shop may have one machine, and no other sheet to compare it with.
    expect(alone).toEqual(said)
  })

  it('a slip that other limits do not fit either', () => {
    const { said } = warnedAfter(pedlar, 'resistance: { low: 210 Ω', 'resistance: { low: 0.21 Ω')
    expect(said).toEqual([expect.stringMatching(/exciter: low, 0\.21 Ω, is far below/)])
  })

  it('a limit far from those on other sheets, where its part kind does not say what is usual', () => {
    const { said, alone } = warnedAfter(
      pedlar,
      'stop-line-off: { high: 2 Ω',
      'stop-line-off: { high: 2 kΩ',
    )
    expect(said.join('\n')).toMatch(
      /^machines.*wires-stop: high, 2 kΩ, is far above what such a part has, 2\sΩ to 2\sΩ on other machines: check .*$/,
    )
    expect(alone).toEqual([])
  })

  it.each([
    [pedlar, 'through: [lead, cap]', 'through: [lead]', 'coil', 'cap'],
    [
      'machines/freshet-4d.yaml',
      'through: [lead-1, lead-4, cap-1, cap-4]',
      'through: [lead-1, cap-1, cap-4]',
      'coil-outer',
      'lead-4',
    ],
  ])(
    'a part on the way of a reading in words that other sheets go through: %s',
    (file, from, to, coil, forgotten) => {
      const { said, alone } = warnedAfter(file, from, to)
      expect(said).toContainEqual(
        expect.stringContaining(
          `${coil}: on other sheets through-cap-resistance of such a part is read through what ${forgotten} is here: name it in through`,
        ),
      )
      expect(alone.join()).not.toContain('on other sheets')
    },
  )

  it('a limit that the part of the other cylinder does not have', () => {
    const { said, line } = warnedAfter(
      larkfell,
      'hot-peak-voltage: { low: 5.4 V',
      'hot-peak-voltage: { low: 4.5 V',
    )
    expect(said).toEqual([
      expect.stringMatching(
        `pickup-right: hot-peak-voltage is at least 5.4.V here, and of pickup-left, its like, at least 4.5.V on line ${line}:`,
      ),
    ])
  })

  it('a family that is nearly that of another sheet', () => {
    const from = 'family: Tarnwick two-stroke singles'
    const { said, alone, line } = warnedAfter(pedlar, from, 'family: Tarnwick Two-stroke twin')
    expect(said).toEqual([
      `${pedlar}:${line}: “Tarnwick Two-stroke twin” is nearly “Tarnwick two-stroke twins”: if they are one family, write both alike`,
    ])
    expect(alone).toEqual([])
  })

  it('and nothing is refused for it', () => {
    const { said } = saidAfter(
      larkfell,
      'hot-peak-voltage: { low: 5.4 V',
      'hot-peak-voltage: { low: 4.5 V',
    )
    expect(said).toBe('')
  })
})
