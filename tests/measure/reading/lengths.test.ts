import { describe, expect, it } from 'vitest'
import { parseQuantityText, parseReading } from '../../../server/measure/reading/parse.ts'
import { parseTouches } from '../../../server/measure/reading/parse-touches.ts'
import { printLimits, printValue } from '../../../server/measure/reading/print.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { gap, angle, 'piston-travel': travel, resistance } = quantities

const taken = (value: number) => ({ ok: true, reading: { kind: 'value', value } })
const refused = (sentence: RegExp) => ({ ok: false, problem: expect.stringMatching(sentence) })

describe('a length', () => {
  it.each([
    ['0.3', 0.3],
    ['0,3 mm', 0.3],
    ['.35MM', 0.35],
    ['0.3 millimetres', 0.3],
    ['0', 0],
    ['0.012in', 0.3048],
    ['0.012 "', 0.3048],
    ['0,012 inch', 0.3048],
    ['12 thou', 0.3048],
    ['12th', 0.3048],
  ])('typed as "%s" is %d mm', (typed, value) => {
    expect(parseReading(typed, gap)).toEqual(taken(value))
  })

  it.each([
    ['2.1 mm BTDC', 2.1],
    ['0.1 in before top', 2.54],
  ])('of a piston may say that it is before the top: "%s" is %d mm', (typed, value) => {
    expect(parseReading(typed, travel)).toEqual(taken(value))
    expect(parseReading(typed, gap)).toEqual(refused(/^The unit in “.*” does not fit gap/))
  })

  it.each([
    ['', /^Write the thickest blade that goes in, 0 where none does, such as 0\.3 or 12 thou\.$/],
    ['0.3 m', /^The unit in “0\.3 m” does not fit gap: write the reading in mm/],
    ['300k', /does not fit gap/],
    ['12 mil', /does not fit gap/],
    ['0.03 cm', /does not fit gap/],
    ['0.3 Ω', /^This reading is in mm: take the feeler gauge, measure again/],
    ['-0.3', /^A gap is never negative: write 0/],
    [
      '51',
      /^More than 50\smm cannot be: check the decimal mark and the unit, and write it such as 0\.3/,
    ],
    ['0mm3', /^Write one number only/],
    ['4k7', /write millimetres as in 0\.3 mm or 12 thou\.$/],
    ['OL', /^OL means nothing on a feeler gauge/],
  ])('typed as "%s" is asked for again', (typed, sentence) => {
    expect(parseReading(typed, gap)).toEqual(refused(sentence))
  })

  it('comes in several tries, each with its unit or without', () => {
    for (const typed of ['0.3 0.35 0.3', '12 thou 14 thou 12 thou', '0.3 mm; 0.35; 12 thou']) {
      const read = parseTouches(typed, gap)
      expect(read, typed).toMatchObject({ ok: true, touches: [{}, {}, {}] })
    }
    expect(parseTouches('1 250', gap)).toEqual(refused(/can be read two ways/))
  })

  it.each([
    [0.3048, '0.3048\u00a0mm'],
    [0.099996, '0.1\u00a0mm'],
    [999.95, '1000\u00a0mm'],
    [1250, '1250\u00a0mm'],
  ])('of %d mm prints as "%s", with no prefix, and reads back', (value, text) => {
    expect(printValue(value, 'mm')).toBe(text)
    expect(printValue(parseQuantityText(text)!.value, 'mm')).toBe(text)
  })

  it('is no resistance', () => {
    expect(parseReading('0.3 mm', resistance)).toEqual(
      refused(/^This reading is in Ω: set the meter/),
    )
  })
})

describe('an angle', () => {
  it.each([
    ['21', 21],
    ['20,5°', 20.5],
    ['20.5 deg', 20.5],
    ['21° BTDC', 21],
  ])('typed as "%s" is %d°', (typed, value) => {
    expect(parseReading(typed, angle)).toEqual(taken(value))
  })

  it('prints with its sign right behind the number, and reads back', () => {
    expect(printLimits({ low: 18, high: 22.5 }, '°')).toBe('18° to 22.5°')
    expect(parseQuantityText('22.5°')).toEqual({ value: 22.5, unit: '°' })
  })

  it('is asked for again in millimetres', () => {
    expect(parseReading('2.1 mm', angle)).toEqual(
      refused(/^This reading is in °: take the degree wheel/),
    )
  })
})
