import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTouches } from '../../../server/measure/reading/parse-touches.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance } = quantities
const peak = quantities['peak-voltage']

function figures(typed: string, quantity = resistance): (number | string)[] | string {
  const parsed = parseTouches(typed, quantity)
  if (!parsed.ok) return parsed.problem
  return parsed.touches.map((touch) => (touch.kind === 'value' ? touch.value : touch.kind))
}

describe('several touches in one field', () => {
  it.each([
    ['about 225', 'Leave out “about” and write the number alone, such as '],
    ['225; roughly', 'The unit in “225; roughly” does not fit resistance'],
    ['225 two 226', 'The unit in “225 two” does not fit resistance'],
  ])('say which word to leave out: %s', (typed, says) => {
    expect(parseTouches(typed, quantities.resistance)).toEqual({
      ok: false,
      problem: expect.stringContaining(says),
    })
  })

  it.each([
    ['52.5', [52.5]],
    ['4.7 kΩ', [4700]],
    ['52.7 58.1 52.5', [52.7, 58.1, 52.5]],
    ['52,7 58,1', [52.7, 58.1]],
    ['52.7; OL; 52,5', [52.7, 'over', 52.5]],
    ['4.7 kΩ 4.8 kΩ', [4700, 4800]],
    ['4.7k 4k8', [4700, 4800]],
    ['OL OL', ['over', 'over']],
    ['52.7, 58.1, 52.5', [52.7, 58.1, 52.5]],
    ['  52.7   58.1  ', [52.7, 58.1]],
    ['52.7\n58.1', [52.7, 58.1]],
    ['52.7 and 58.1', [52.7, 58.1]],
    ['52.7/58.1', [52.7, 58.1]],
    ['610 620 610', [610, 620, 610]],
  ])('%j is %j', (typed, expected) => {
    expect(figures(typed)).toEqual(expected)
  })

  it('takes several pulls of a peak voltage', () => {
    expect(figures('140 V 152 V 149', peak)).toEqual([140, 152, 149])
  })

  it.each([
    ['52.7 12 V', /ohms|Ω/i],
    ['52.7 -3', /zero|below|negative/i],
    ['1 250', /“1 250” can be read two ways: write 1250 for one reading, or 1; 250 for several/],
    ['12 500 Ω', /can be read two ways: write 12500/],
    ['abc def', /number|figure|meter/i],
    ['1 2 3 4 5 6 7 8 9 10 11 12 13', /at most 12 touches/],
  ])('refuses %j with one sentence', (typed, sentence) => {
    expect(figures(typed)).toMatch(sentence)
  })

  it('never throws, and what it takes is at least one touch', () => {
    let taken = 0
    const words = fc.constantFrom('52.7', 'OL', 'k', ' ', ';', ',', '4k7', 'Ω', '-', 'x', '\n')
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(words).map((w) => w.join('')),
        ),
        (typed) => {
          const parsed = parseTouches(typed, resistance)
          if (!parsed.ok) expect(parsed.problem).toMatch(/\S/)
          else {
            taken += 1
            expect(parsed.touches.length).toBeGreaterThan(0)
          }
        },
      ),
      { numRuns: 2000 },
    )
    expect(taken).toBeGreaterThan(50)
  })
})
