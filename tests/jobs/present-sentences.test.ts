import { describe, expect, it } from 'vitest'
import {
  clauses,
  counted,
  listed,
  lowerFirst,
  minutes,
  percent,
  sentence,
  the,
} from '../../server/jobs/words/sentences.ts'

describe('a percentage', () => {
  it.each([
    [0, '<1 %'],
    [0.0099, '<1 %'],
    [0.01, '1 %'],
    [0.374, '37 %'],
    [0.99, '99 %'],
    [0.9901, '>99 %'],
    [1, '>99 %'],
  ])('of %d is %s', (probability, says) => {
    expect(percent(probability).replace('\u00a0', ' ')).toBe(says)
  })
})

describe('a list', () => {
  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
  ])('of %j is “%s”', (items, says) => {
    expect(listed(items)).toBe(says)
  })

  it('takes another word before the last', () => {
    expect(listed(['a', 'b'], 'or')).toBe('a or b')
  })

  it.each([
    [['a', 'b'], 'a; b'],
    [['a', 'b', 'c'], 'a; b; c'],
    [['a', 'b', 'c', 'd'], 'a; b; and 2 more'],
  ])('of clauses %j, shortened to two, is “%s”', (items, says) => {
    expect(clauses(items, 2)).toBe(says)
  })
})

describe('a name inside a sentence', () => {
  it.each([
    ['Start exciter', 'start exciter'],
    ['AC supply', 'AC supply'],
    ['OL', 'OL'],
    ['52.5 Ω', '52.5 Ω'],
    ['A good igniter', 'a good igniter'],
    ['É', 'É'],
    ['', ''],
  ])('%s becomes “%s”', (text, says) => {
    expect(lowerFirst(text)).toBe(says)
  })

  it('has one article', () => {
    expect(the('Start exciter')).toBe('the start exciter')
    expect(the('The left coil')).toBe('the left coil')
  })
})

describe('a sentence', () => {
  it.each([
    ['read the meter', 'Read the meter.'],
    ['Does it hum?', 'Does it hum?'],
    ['  Done. ', 'Done.'],
  ])('is finished: %s', (text, says) => {
    expect(sentence(text)).toBe(says)
  })
})

it('counts one and many', () => {
  expect(counted(1, 'entry', 'entries')).toBe('1 entry')
  expect(counted(0, 'reading')).toBe('0 readings')
})

it.each([
  [3, '3 min'],
  [0.5, '0.5 min'],
  [0.1 + 0.2, '0.3 min'],
])('prints %d minutes as %s', (count, says) => {
  expect(minutes(count).replace('\u00a0', ' ')).toBe(says)
})
