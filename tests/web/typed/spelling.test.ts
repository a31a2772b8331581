import { describe, expect, it } from 'vitest'
import { plainWords, slips } from '../../../server/web/typed/spelling.ts'

describe('words are compared', () => {
  it('without accents, capitals and marks', () => {
    expect(plainWords('Tärnwick “Haulmoor-1e”, №2')).toEqual(['tarnwick', 'haulmoor', '1e', 'no2'])
    expect(plainWords(' –, ')).toEqual([])
  })

  it.each([
    ['haul', 'haulmoor', 0],
    ['haulmoor', 'haulmoor', 0],
    ['halmoor', 'haulmoor', 1],
    ['hualmoor', 'haulmoor', 1],
    ['hauul', 'haulmoor', 1],
    ['lakrfel', 'larkfell', 1],
    ['hailmooor', 'haulmoor', 2],
    ['pedlr', 'pedlar', 1],
  ])('by how they begin, and how many slips away that is: %s, %s', (typed, word, count) => {
    expect(slips(typed, word)).toBe(count)
  })

  it.each([
    ['hul', 'haulmoor'],
    ['2i', '1i'],
    ['moor', 'haulmoor'],
    ['hxxlmoor', 'haulmore'],
    ['pump', 'pedlar'],
    ['haulmoorland', 'haulmoor'],
  ])('and are different words where that is too many: %s, %s', (typed, word) => {
    expect(slips(typed, word)).toBe(null)
  })
})
