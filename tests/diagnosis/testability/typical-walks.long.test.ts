import { describe, expect, it } from 'vitest'
import { toTheEnd } from '../../../server/diagnosis/testability/steps.ts'
import {
  testability,
  testabilityInSteps,
} from '../../../server/diagnosis/testability/testability.ts'
import { typicalWalks } from '../../../server/diagnosis/testability/typical-walks.ts'
import { shippedCases } from '../../support/knowledge.ts'
import { typicalWalk } from '../../support/oracles/typical-walk.ts'
import { modelFromTable } from '../../support/tables.ts'

const { model } = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'dead-lights' && machine.outputs.length > 1,
)!
const all = [...model.cutSets.keys()]

describe('faults that walk together', () => {
  it.each([
    ['with every check', new Set<string>()],
    ['without some', new Set(model.checks.filter((_, k) => k % 3 === 0).map(({ id }) => id))],
  ])('end as each does alone, %s', (_, impossible) => {
    const together = toTheEnd(typicalWalks(model, all, impossible))
    expect([...together.keys()].sort((a, b) => a - b)).toEqual(all)
    for (const c of all) expect(together.get(c)).toEqual(typicalWalk(model, c, impossible))
    const lengths = all.map((c) => together.get(c)!.evidence.length)
    expect(new Set(lengths).size).toBeGreaterThan(2)
  })

  it('take fewer steps than all of them alone', () => {
    const alone = all.reduce((sum, c) => sum + stepsIn(typicalWalks(model, [c], new Set())), 0)
    expect(stepsIn(typicalWalks(model, all, new Set()))).toBeLessThan(alone / 1.5)
  })
})

describe('testability in steps', () => {
  it('comes to the same as at once, and can be left off in between', () => {
    const steps = testabilityInSteps(model, new Set())
    for (let k = 0; k < 10; k += 1) expect(steps.next().done).toBe(false)
    expect(toTheEnd(steps)).toEqual(testability(model))
  })

  it('counts a check as asked for where only pairs of faults need it', () => {
    // The lamp tells single faults apart, and two pairs from them; the swap tells the pairs apart.
    const table = modelFromTable(
      { none: 0.1, s1: 0.4, s2: 0.3, s3: 0.1, first: 0.05, second: 0.05 },
      { lamp: [0, 1, 2, 3, 4, 4], swap: [0, 0, 0, 0, 0, 1], idle: [0, 0, 0, 0, 0, 0] },
    )
    const pairs: Readonly<Record<string, string[]>> = { first: ['s1', 's2'], second: ['s1', 's3'] }
    const cutSets = table.cutSets.map((each) => {
      const pair = pairs[each.faults[0] ?? '']
      return pair ? { ...each, faults: pair, parts: pair } : each
    })
    const mixed = { ...table, cutSets }
    for (const c of [1, 2, 3]) {
      const { evidence } = typicalWalk(mixed, c, new Set())
      expect(evidence.map(({ check }) => check)).toEqual(['lamp'])
    }
    const found = testability(mixed)
    expect(found.faults).toBe(3)
    expect(found.neverAsked).toEqual(['idle'])
  })
})

const stepsIn = (steps: Iterable<unknown>): number => [...steps].length
