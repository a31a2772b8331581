import { describe, expect, it } from 'vitest'
import { parseReading } from '../../../server/measure/reading/parse.ts'
import { parseTouches } from '../../../server/measure/reading/parse-touches.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import { bands, type Quantity } from '../../../server/measure/reading/quantity.ts'
import { settings } from '../../../server/measure/reading/settings.ts'

const rows: readonly (readonly [string, Quantity])[] = Object.entries(quantities)

/** "52.5, 4.7k or OL" in its pieces; a comma inside a number is followed by a digit. */
const piecesOf = (examples: string) => examples.split(/, | or /)

describe('a row of the quantities', () => {
  it('is there at all', () => {
    expect(rows.length).toBeGreaterThanOrEqual(7)
  })

  it.each(rows)('%s has its own name, and the unit of its setting', (id, quantity) => {
    expect(quantity.id).toBe(id)
    expect(settings[quantity.setting].unit).toBe(quantity.unit)
  })

  it.each(rows)('%s has rising bands around the limits', (_, { bands: own, overRange }) => {
    expect(own).toContain('in range')
    expect(own).toEqual(bands.filter((band) => own.includes(band)))
    if (overRange !== null) expect(own).toContain(overRange)
  })

  it.each(rows)('%s points to other rows only', (_, { instead }) => {
    for (const id of instead?.quantities ?? []) expect(Object.keys(quantities)).toContain(id)
  })

  it.each(rows)('%s takes every example it gives, in the ways it gives them', (_, quantity) => {
    const { few, all, several } = quantity.examples
    const pieces = [...piecesOf(few), ...piecesOf(all)]
    expect(pieces.length).toBeGreaterThan(3)
    for (const piece of pieces)
      expect(parseReading(piece, quantity), piece).toMatchObject({ ok: true })
    const touches = parseTouches(several, quantity)
    expect(touches).toMatchObject({ ok: true, touches: [{}, {}, {}] })
  })

  it.each(rows)('%s takes the words after its unit that mean it', (_, quantity) => {
    for (const kind of quantity.kinds) {
      const read = parseReading(`12 ${quantity.unit} ${kind}`, quantity)
      expect(read, kind).toEqual({ ok: true, reading: { kind: 'value', value: 12 } })
    }
  })

  it.each(rows)('%s takes OL where it has a band for it, and says what to do', (_, quantity) => {
    const read = parseReading('OL', quantity)
    expect(read.ok).toBe(quantity.overRange !== null)
    if (!read.ok) expect(read.problem).toBe(quantity.whenOver)
    expect(quantity.whenOver).toMatch(/^OL means .+: .+\.$/)
  })
})
