import { describe, expect, it } from 'vitest'
import { inOrder } from '../../server/knowledge/sheet/order.ts'
import { assembliesOf, readingsIn } from '../../server/knowledge/sheet/scope.ts'
import { sheetFor } from '../../server/knowledge/sheet/sheet.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const machines = [...knowledge.machines.values()]
const tools = Object.keys(knowledge.tools.tools)

/** Connectors taken apart and joined, and covers, from the first reading to the last. */
function undoings(readings: ReturnType<typeof inOrder>): number {
  let stands = new Set<string>()
  let count = 0
  for (const { card } of readings) {
    const barred = new Set(card.forbids.map(({ id }) => id))
    const kept = new Set([...stands].filter((id) => !barred.has(id)))
    count += stands.size - kept.size
    const made = card.setups.map(({ id }) => id).filter((id) => !kept.has(id))
    count += made.length
    stands = new Set([...kept, ...made])
  }
  return count
}

describe.each(machines.map((machine) => [machine.name, machine] as const))(
  'what is checked over of the %s',
  (_, machine) => {
    const whole = readingsIn(knowledge, machine, { kind: 'machine' }, tools)

    it('is read with the engine stopped and cold, and nothing is cranked', () => {
      expect(whole.length).toBeGreaterThan(5)
      for (const { card } of whole) {
        expect(card.engine).toBe('stopped')
        expect(card.setups.every(({ id }) => /^(access|unplug) /.test(id))).toBe(true)
      }
    })

    it('comes in an order that takes less undoing than that of the sheet', () => {
      const ordered = inOrder(whole)
      expect(new Set(ordered)).toEqual(new Set(whole))
      expect(undoings(ordered)).toBeLessThan(undoings(whole))
    })

    it('of a loose assembly is read at its own connectors alone, with nothing to take off', () => {
      const assemblies = assembliesOf(machine)
      // One block beside the flywheel is no assembly: nothing comes off with it.
      const named = machine.parts.flatMap(({ assembly }) => assembly ?? [])
      expect(assemblies.map(({ name }) => name).sort()).toEqual([...new Set(named)].sort())
      for (const { id, parts } of assemblies) {
        const readings = readingsIn(knowledge, machine, { kind: 'loose', assembly: id }, tools)
        expect(readings.length, id).toBeGreaterThan(0)
        for (const { card } of readings) {
          expect(parts).toContain(card.part)
          expect(card.setups).toEqual([])
        }
      }
    })

    it('of one plug is what the sheet reads there', () => {
      const [plug] = Object.keys(machine.connectors)
      const readings = readingsIn(knowledge, machine, { kind: 'plug', plug: plug! }, tools)
      expect(readings.length).toBeGreaterThan(0)
      expect(readings.length).toBeLessThan(sheetFor(knowledge, machine).readings.size)
      for (const { card } of readings) expect(card.spot.connector?.id).toBe(plug)
    })
  },
)
