import { describe, expect, it } from 'vitest'
import type { Evidence, Model } from '../../../server/diagnosis/model/model.ts'
import { gained, lost, movesOf } from '../../../server/diagnosis/verdict/gained.ts'
import { modelFromTable } from '../../support/tables.ts'

/** Three parts; the lamp speaks for `a`, the horn hardly says anything. */
function model(): Model {
  const table = modelFromTable({ a: 0.4, b: 0.4, c: 0.2 }, { lamp: [0, 1, 1], horn: [0, 0, 1] })
  const rows: Readonly<Record<string, readonly (readonly number[])[]>> = {
    lamp: [
      [0.98, 0.02],
      [0.03, 0.97],
      [0.03, 0.97],
    ],
    horn: [
      [0.5, 0.5],
      [0.45, 0.55],
      [0.5, 0.5],
    ],
  }
  const checks = table.checks.map((check) => ({ ...check, chances: rows[check.id]! }))
  return { ...table, checks }
}

const gainedBy = (of: Model, evidence: readonly Evidence[], check: string) =>
  gained(of, movesOf(of, evidence, check))
const lostBy = (
  of: Model,
  evidence: readonly Evidence[],
  check: string,
  cleared: readonly string[],
) => lost(movesOf(of, evidence, check), cleared)

const lamp: Evidence = { check: 'lamp', likelihoods: [1, 0] }
const horn: Evidence = { check: 'horn', likelihoods: [1, 0] }
const faultsOf = (part: string) =>
  model()
    .cutSets.filter(({ parts }) => parts.includes(part))
    .flatMap(({ faults }) => faults)

describe('what one reading did', () => {
  it('is where it moved the probability to', () => {
    const most = gainedBy(model(), [lamp], 'lamp')!
    expect(faultsOf('a').concat('a')).toContain(most.name.replace('part:', ''))
    expect(most.before).toBeCloseTo(0.4, 6)
    expect(most.now).toBeGreaterThan(0.9)
    expect(gainedBy(model(), [horn], 'horn')).toBeNull()
  })

  it('rules out what it speaks against, and not what others had all but cleared', () => {
    const fallen = faultsOf('b')
    expect(lostBy(model(), [lamp, horn], 'lamp', fallen)).toEqual(fallen)
    expect(lostBy(model(), [lamp, horn], 'horn', fallen)).toEqual([])
    expect(lostBy(model(), [lamp], 'lamp', [])).toEqual([])
  })
})
