import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../server/knowledge/sheet/sheet.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const machines = [...knowledge.machines.values()]

describe.each(machines.map((machine) => [machine.name, machine] as const))(
  'the sheet of the %s',
  (_, machine) => {
    const { readings, parts } = sheetFor(knowledge, machine)
    const all = [...readings.values()]

    it('has every limit that is written on it, at every place it is written for', () => {
      const written = machine.parts.flatMap(({ id, limits = {}, reach = [] }) =>
        Object.keys(limits).flatMap((property) =>
          reach.filter((way) => way.for.includes(property)).map(() => `${id} ${property}`),
        ),
      )
      expect(written.length).toBeGreaterThan(5)
      const drawn = all.map(({ card }) => `${card.part} ${card.measurand.property}`)
      expect(drawn.sort()).toEqual(written.sort())
    })

    it('names each reading as the cases do, so that a job can begin with it', () => {
      const cases = shippedCases().filter((kase) => kase.machine.id === machine.id)
      const known = new Set(cases.flatMap((kase) => [...kase.checks.keys()]))
      const unknown = all.filter(({ card }) => !known.has(card.id)).map(({ card }) => card.id)
      // A wire that no complaint of this machine hangs on.
      expect(unknown.filter((id) => !id.startsWith('wire-'))).toEqual([])
      expect(unknown.length).toBeLessThan(2)
    })

    it('says how each of them comes out, healthy and with each failure that shows in it', () => {
      for (const { card, healthy, failures } of all) {
        for (const row of [healthy, ...failures.map((failure) => failure.row)]) {
          expect(row.length, card.id).toBe(card.outcomes.length)
          expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6)
        }
        for (const { part, rate } of failures) {
          expect(parts.has(part)).toBe(true)
          expect(rate).toBeGreaterThan(0)
        }
      }
    })
  },
)
