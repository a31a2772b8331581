import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvLine } from '../../server/jobs/export/csv-line.ts'
import { readCsv } from '../support/oracles/csv.ts'

/** Text as people type and paste it: quotes, commas, line ends, and what begins a formula. */
const typed = fc.string({
  unit: fc.constantFrom('a', ' ', '"', ',', '\r', '\n', '=', '-', '+', '@', '\t', '1', 'Ω', '＝'),
  maxLength: 6,
})

describe('a line of CSV', () => {
  it.each([
    ['letter by letter', readCsv],
    ['a library', (text: string) => parse(text, { record_delimiter: '\r\n' }) as string[][]],
  ])('is read back as it was written, whatever stands in it, by %s', (_, reader) => {
    // A line of one empty cell is no line to every reader.
    const table = fc
      .integer({ min: 2, max: 4 })
      .chain((width) => fc.array(fc.array(typed, { minLength: width, maxLength: width })))
    fc.assert(
      fc.property(table, (lines) => {
        const read = reader(lines.map(csvLine).join(''))
        const unguarded = read.map((line) => line.map((cell) => cell.replace(/^'/, '')))
        expect(unguarded).toEqual(lines)
      }),
    )
  })

  it('holds no cell that a spreadsheet would work out', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const [[cell = ''] = []] = readCsv(csvLine([text]))
        expect(cell).not.toMatch(/^[=@\t\r\n＝]|^[+-](?!\d+$)/)
      }),
    )
  })

  it.each([
    ['=HYPERLINK("http://x.example")', `"'=HYPERLINK(""http://x.example"")"\r\n`],
    ['@SUM(A1)', "'@SUM(A1)\r\n"],
    ['+1+1', "'+1+1\r\n"],
    ['-12.5', '-12.5\r\n'],
    ['-12,5', '"-12,5"\r\n'],
    [-12.5, '-12.5\r\n'],
    [null, '\r\n'],
    ['5\u00a0kΩ', '5 kΩ\r\n'],
  ])('writes %j as %j', (cell, line) => {
    expect(csvLine([cell])).toBe(line)
  })
})

describe('the reader of these tests', () => {
  it.each(['a\n', 'a', 'a"b\r\n', '"a\r\n', '"a"b\r\n', 'a,b\r\nc\r\n'])('refuses %j', (text) => {
    expect(() => readCsv(text)).toThrow()
  })
})
