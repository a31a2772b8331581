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
    ['8.8', [8.8]],
    ['6.3 kΩ', [6300]],
    ['8.9 9.4 8.8', [8.9, 9.4, 8.8]],
    ['8,9 9,4', [8.9, 9.4]],
    ['8.9; OL; 8,8', [8.9, 'over', 8.8]],
    ['6.3 kΩ 6.4 kΩ', [6300, 6400]],
    ['6.3k 6k4', [6300, 6400]],
    ['OL OL', ['over', 'over']],
    ['8.9, 9.4, 8.8', [8.9, 9.4, 8.8]],
    ['  8.9   9.4  ', [8.9, 9.4]],
    ['8.9\n9.4', [8.9, 9.4]],
  ])('%j is %j', (typed, expected) => {
    expect(figures(typed)).toEqual(expected)
  })

  it('takes several pulls of a peak voltage', () => {
    expect(figures('140 V 152 V 149', peak)).toEqual([140, 152, 149])
  })

  it.each([
    ['8.9 12 V', /ohms|Ω/i],
    ['8.9 -3', /zero|below|negative/i],
    ['abc def', /number|figure|meter/i],
    ['1 2 3 4 5 6 7 8 9 10 11 12 13', /at most 12 touches/],
  ])('refuses %j with one sentence', (typed, sentence) => {
    expect(figures(typed)).toMatch(sentence)
  })

  it('never throws, and what it takes is at least one touch', () => {
    let taken = 0
    const words = fc.constantFrom('8.9', 'OL', 'k', ' ', ';', ',', '6k3', 'Ω', '-', 'x', '\n')
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
