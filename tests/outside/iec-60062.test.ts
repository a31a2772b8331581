import { expect, it } from 'vitest'
import { parseReading } from '../../server/measure/reading/parse.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'

/**
 * Value letters of IEC 60062:2016, the letter in the place of the decimal mark.
 * Source: examples at https://en.wikipedia.org/wiki/IEC/EN_60062. Status: confirmed.
 */
it.each([
  ['R47', 0.47],
  ['4R7', 4.7],
  ['470R', 470],
  ['4K7', 4_700],
  ['47K', 47_000],
  ['47K3', 47_300],
  ['470K', 470_000],
  ['4M7', 4_700_000],
])('IEC 60062 writes %s for %d Ω', (code, value) => {
  expect(parseReading(code, quantities.resistance)).toEqual({
    ok: true,
    reading: { kind: 'value', value },
  })
})
