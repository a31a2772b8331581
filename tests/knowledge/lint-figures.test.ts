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

  it('is refused in a meter, too', () => {
    const { said, line } = saidAfter('meters/hand.yaml', 'top: 400 Ω', 'top: 400')
    expect(said).toBe(`meters/hand.yaml:${line}: write 400 Ω`)
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
