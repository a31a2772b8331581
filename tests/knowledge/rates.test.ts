import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { named } from '../../server/diagnosis/model/named.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { causesOf } from '../../server/knowledge/rates/causes.ts'
import { presentElsewhere } from '../../server/knowledge/rates/elsewhere.ts'
import {
  type CountedRepair,
  factorsOf,
  presentRates,
} from '../../server/knowledge/rates/present.ts'
import { shippedKnowledge, twin } from '../support/knowledge.ts'

const shipped = shippedKnowledge()
const machines = [...shipped.machines.values()]
const pedlar = named(shipped.machines, 'pedlar-1c')
const repairs = fc
  .record({ machine: fc.constantFrom(...machines), cause: fc.nat() })
  .map(({ machine, cause }): CountedRepair => {
    const causes = causesOf(shipped, machine)
    const { kind, role, mode } = causes[cause % causes.length]!
    return { machine: machine.id, causes: [{ kind, role, mode, count: 1 }] }
  })

const now = (knowledge: Knowledge, all: readonly CountedRepair[], machine = pedlar) =>
  presentRates(knowledge, machine, all).map((rate) => rate.now)

/** The sheet's rates, each once for every part that has it. */
const total = (rates: readonly number[], machine = pedlar) =>
  causesOf(shipped, machine).reduce((sum, { parts }, i) => sum + rates[i]! * parts.length, 0)

describe('what confirmed repairs make of a sheet’s rates', () => {
  it('is the tables where there are none, for every machine', () => {
    for (const machine of machines) {
      const tables = causesOf(shipped, machine).map(({ rate }) => expect.closeTo(rate, 9))
      expect(now(shipped, [], machine)).toEqual(tables)
    }
  })

  it('does not depend on the order in which they came, and keeps the sum', () => {
    const several = fc.array(repairs, { maxLength: 40 })
    fc.assert(
      fc.property(several, (all) => {
        const rates = now(shipped, all)
        expect(now(shipped, all.toReversed())).toEqual(rates.map((rate) => expect.closeTo(rate, 9)))
        expect(total(rates)).toBeCloseTo(total(now(shipped, [])), 6)
      }),
      { numRuns: 30 },
    )
  })

  it('is shared by parts that are alike, as on a twin', () => {
    const sheet = twin()
    const cause = causesOf(shipped, sheet).find(({ parts }) => parts.length === 2)!
    const { kind, role, mode, parts } = cause
    const repair = { machine: sheet.id, causes: [{ kind, role, mode, count: 1 }] }
    const factors = factorsOf(presentRates(shipped, sheet, [repair]))
    const [one, other] = parts.map(({ id }) => named(factors, `${id}.${mode}`))
    expect(one).toBeGreaterThan(1)
    expect(other).toBe(one)
  })

  it('is the same for all sheets of a family', () => {
    const sibling = { ...pedlar, id: 'pedlar-2c' }
    const knowledge = {
      ...shipped,
      machines: new Map([...shipped.machines, [sibling.id, sibling]]),
    }
    const { kind, role, mode } = causesOf(shipped, pedlar)[0]!
    const on = (machine: string) => [{ machine, causes: [{ kind, role, mode, count: 1 }] }]
    expect(now(knowledge, on('pedlar-2c'))).toEqual(now(knowledge, on('pedlar-1c')))
    expect(now(knowledge, on('larkfell-2i'))[0]).toBeLessThan(now(knowledge, on('pedlar-1c'))[0]!)
    expect(now(knowledge, on('no longer there'))).toEqual(now(knowledge, []))
  })

  it('has a factor for every fault of every case of the machine', () => {
    const factors = factorsOf(presentRates(shipped, pedlar, []))
    const { faults } = caseFor(shipped, 'pedlar-1c', 'no-spark')
    expect(faults.size).toBeGreaterThan(30)
    expect([...faults.keys()].filter((fault) => !factors.has(fault))).toEqual([])
  })
})

describe('the share of causes that are none of the tree', () => {
  const complaint = { id: 'misfires-at-speed', elsewhere: { share: 0.4, says: '', source: '' } }
  const others = machines.find(({ family }) => family !== pedlar.family)!
  const part = { machine: pedlar.id, causes: [], complaint: complaint.id }
  const none = { ...part, cause: 'A nest of mice' }
  const nowOf = (all: readonly CountedRepair[]) =>
    presentElsewhere(shipped, pedlar, complaint, all).now

  it('is that of the tables where nothing was confirmed', () => {
    expect(nowOf([])).toBeCloseTo(0.4, 12)
  })

  it('is the mean of the tables’ forty and what was confirmed, but for the tenth that stays', () => {
    // 0.1 · 0.4 + 0.9 · (40 · 0.4 + 3) / (40 + 4)
    const all = [none, none, none, part]
    expect(nowOf(all)).toBeCloseTo(0.04 + (0.9 * 19) / 44, 12)
  })

  it('is not lowered by what was confirmed of parts: all else is written down less often', () => {
    expect(nowOf(Array(40).fill(part))).toBe(0.4)
    // Beside so many of the tree, one that is not moves it less.
    const few = Array(4).fill(part)
    expect(nowOf([none, none, none, ...few])).toBeLessThan(nowOf([none, none, none]))
  })

  it('moves by a quarter for another family, and by nothing for another complaint or a machine that is gone', () => {
    const elsewhere = { ...none, machine: others.id }
    expect(nowOf([elsewhere])).toBeCloseTo(0.04 + (0.9 * 16.25) / 40.25, 12)
    const gone = { ...none, machine: 'warp-drive' }
    expect(nowOf([{ ...none, complaint: 'no-spark' }, gone])).toBeCloseTo(0.4, 12)
  })

  it('is not moved by what was confirmed before it could be written down', () => {
    const { complaint: _, ...before } = part
    expect(nowOf([before, before])).toBeCloseTo(0.4, 12)
    expect(presentElsewhere(shipped, pedlar, complaint, [before]).own.all).toBe(0)
  })
})
