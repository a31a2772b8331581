import { describe, expect, it } from 'vitest'
import { changedTrees } from '../support/changed-trees.ts'

const { saidAfter } = changedTrees()

const sheet = 'machines/pedlar-1c.yaml'
const limits = 'resistance: { low: 210 Ω, high: 290 Ω'

describe('a slip in a figure', () => {
  it.each([
    ['no unit', 'high: 290', /resistance is given in Ω: write 290 Ω$/],
    ['a prefix and no unit', 'high: 0.29k', /: write 0\.29kΩ$/],
    ['the unit of another quantity', 'high: 290 V', /is given in Ω: write “290 V” in Ω$/],
    [
      'a unit nobody knows',
      'high: 290 Ohmn',
      /the unit of “290 Ohmn” is not known here: write 290 Ω/,
    ],
    [
      'a thousands comma',
      "high: '1,290 Ω'",
      /“1,290 Ω” can be read two ways: write it with one point/,
    ],
    [
      'both limits in one',
      'high: 210 - 290 Ω',
      /“210 - 290 Ω” is more than one value: write the lower/,
    ],
    ['OL', 'high: OL', /OL is no limit: leave this side out/],
    [
      'nothing but a unit',
      'high: Ω',
      /write “Ω” as one value with its unit, like 310 Ω or 7\.8 kΩ$/,
    ],
    ['more than there is', 'high: 290 GGΩ', /the unit of “290 GGΩ” is not known/],
    ['ohms beyond any', 'high: 2900000 MΩ', /more than 1000\sGΩ cannot be: check the prefix$/],
    [
      'a decimal comma',
      'high: 0,29 kΩ',
      /limits\.resistance: a comma ends a value here: .*, 0\.29 kΩ$/,
    ],
  ])('is refused with what to write: %s', (_, high, sentence) => {
    const to = limits.replace('high: 290 Ω', high)
    const { said, line } = saidAfter(sheet, limits, to)
    expect(said).toMatch(new RegExp(`^${sheet}:${line}: .*${sentence.source}`))
  })

  it('is meant in the unit of the other limit, where that has one', () => {
    const cap = [
      'cap-resistance: { low: 4.2 kΩ, high: 5.8 kΩ',
      'cap-resistance: { low: 4.2 kΩ, high: 5.8',
    ]
    const { said } = saidAfter('machines/clipwell-1m.yaml', cap[0]!, cap[1]!)
    expect(said).toMatch(/cap-resistance is given in Ω: write 5\.8 kΩ$/)
  })

  it('is refused in a meter, too', () => {
    const { said, line } = saidAfter('meters/hand.yaml', 'top: 400 Ω', 'top: 400')
    expect(said).toBe(`meters/hand.yaml:${line}: write 400 Ω`)
  })
})

describe('a slip in a length or an angle', () => {
  const fernslade = 'machines/fernslade-1p.yaml'
  const gap = 'points-gap: { low: 0.3 mm, high: 0.4 mm'
  it.each([
    ['no unit', 'high: 0.4', /points-gap is given in mm: write 0\.4 mm$/],
    ['ohms', 'high: 0.4 Ω', /points-gap is given in mm: write “0\.4 Ω” in mm$/],
    ['a lone m', 'high: 0.4m', /points-gap is given in mm: write 0\.4 mm$/],
    [
      'a unit nobody knows',
      'high: 0.4 cm',
      /the unit of “0\.4 cm” is not known here: write 0\.4 mm$/,
    ],
    [
      'nothing but a unit',
      'high: mm',
      /write “mm” as one value with its unit, like 0\.3 mm or 12 thou$/,
    ],
    ['upside down', 'high: 8 thou', /the limits are upside down: low is 0\.3 mm, high is 8 thou$/],
  ])('is refused with what to write: %s', (_, high, sentence) => {
    const { said, line } = saidAfter(fernslade, gap, gap.replace('high: 0.4 mm', high))
    expect(said).toMatch(new RegExp(`^${fernslade}:${line}: .*${sentence.source}`))
  })

  it.each([
    ['no unit', '{ stroke: 49, rod: 92 mm,', /stroke is given in mm: write 49 mm$/],
    [
      'a rod that cannot be',
      '{ stroke: 49 mm, rod: 9.2 mm,',
      /no crank of 49 mm turns with a rod of 9\.2 mm/,
    ],
  ])('is refused in a crank: %s', (_, crank, sentence) => {
    const { said } = saidAfter(fernslade, '{ stroke: 49 mm, rod: 92 mm,', crank)
    expect(said).toMatch(sentence)
  })

  it('is refused in an angle with its sign right behind the number', () => {
    const { said } = saidAfter(
      fernslade,
      'opening: { low: 1.8 mm, high: 2.6 mm',
      'opening-angle: { low: 19°, high: 24',
    )
    expect(said).toMatch(/opening-angle is given in °: write 24°$/m)
  })

  it('is refused in the steps of a gauge, too', () => {
    const { said, line } = saidAfter('tools.yaml', 'digit: 0.05 mm', 'digit: 0.05')
    expect(said).toBe(`tools.yaml:${line}: write 0.05 mm`)
  })

  it('is refused where no tool of a check can read it', () => {
    const { said } = saidAfter('checks/plug-gap.yaml', 'tools: [feeler-gauge]', 'tools: []')
    expect(said).toMatch(/gap is read with a feeler gauge: add feeler-gauge to its tools$/)
  })

  it.each([
    ['unless: air-gap', 'unless: lug', /lug is not measured on this kind: there is resistance, /],
    [
      'beside: air-gap',
      'beside: airgap',
      /airgap is not measured on this kind: there is resistance, /,
    ],
  ])('is refused where a look stands beside no measurement: %s', (from, to, sentence) => {
    expect(saidAfter('parts/pickup.yaml', from, to).said).toMatch(sentence)
  })

  it('is refused where two moments are one in the same measure', () => {
    const { said } = saidAfter('parts/points.yaml', 'as: opening-angle', 'as: points-gap')
    expect(said).toMatch(
      /points-gap is not the same moment in the other measure: there is opening-angle$/,
    )
  })
})

describe('a name that stands twice', () => {
  it.each([
    ["'2':", "'1':", "'1'"],
    ["'2':", '1:', '1'],
  ])('is refused, however it is written: %s as %s', (from, to, name) => {
    const { said, line } = saidAfter(sheet, `${from} { wire: [RD, BK]`, `${to} { wire: [RD, BK]`)
    expect(said).toBe(`${sheet}:${line}: ${name} stands here twice: keep one of the two`)
  })
})
