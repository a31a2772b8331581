import { describe, expect, it } from 'vitest'
import { minimalCutSets } from '../../server/diagnosis/tree/cut-sets.ts'
import type { Gate } from '../../server/diagnosis/tree/fault-tree.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import { modelFromTable, saw } from '../support/tables.ts'

/**
 * J. de Kleer, B. C. Williams 1987, "Diagnosing multiple faults", Artificial Intelligence 32(1):97-130.
 * Three multipliers and two adders: X=AC (M1), Y=BD (M2), Z=CE (M3), F=X+Y (A1), G=Y+Z (A2), with A=3,
 * B=2, C=2, D=3, E=3. F is seen as 10 instead of 12, then G as 12.
 * Circuit, inputs, order of observations and the four minimal diagnoses: confirmed in a public text that
 * quotes them. That X is the best next probe: from memory. The 1 bit: computed from the definition.
 */
const parts = { M1: 0.2, M2: 0.2, M3: 0.2, A1: 0.2, A2: 0.2 }

// Does the value come out wrong when that one part fails? (order M1 M2 M3 A1 A2)
const probes = {
  F: ['wrong', 'wrong', 'right', 'wrong', 'right'],
  G: ['right', 'wrong', 'wrong', 'right', 'wrong'],
  X: ['wrong', 'right', 'right', 'right', 'right'],
  Y: ['right', 'wrong', 'right', 'right', 'right'],
  Z: ['right', 'right', 'wrong', 'right', 'right'],
}

describe('the polybox of de Kleer and Williams', () => {
  const model = modelFromTable(parts, probes)
  const bitsAfter = (...evidence: ReturnType<typeof saw>[]) => {
    const { proposals } = walk(model, { evidence, impossible: new Set() })
    return Object.fromEntries(proposals.map(({ check, bits }) => [check, bits]))
  }

  it('suspects M1, M2 and A1 alike once F is wrong, and ties X, Y and G while Z tells nothing', () => {
    const evidence = [saw(model, 'F', 'wrong')]
    const suspects = walk(model, { evidence, impossible: new Set() }).suspects
    const top = suspects.filter(({ probability }) => probability > 1e-12)
    expect(top.map(({ part }) => part)).toEqual(['A1', 'M1', 'M2'])
    for (const { probability } of top) expect(probability).toBeCloseTo(1 / 3, 12)
    const bits = bitsAfter(...evidence)
    expect(bits.X).toBeCloseTo(0.9183, 4)
    expect(bits.Y).toBeCloseTo(0.9183, 4)
    expect(bits.G).toBeCloseTo(0.9183, 4)
    expect(bits.Z).toBeCloseTo(0, 12)
  })

  it('is left with M1 and A1 at one half once G is right, and asks for X, worth exactly one bit', () => {
    const evidence = [saw(model, 'F', 'wrong'), saw(model, 'G', 'right')]
    const now = walk(model, { evidence, impossible: new Set() })
    expect(now.suspects.slice(0, 2)).toEqual([
      { part: 'A1', probability: 0.5 },
      { part: 'M1', probability: 0.5 },
    ])
    expect(now.step).toMatchObject({ kind: 'ask', proposal: { check: 'X', bits: 1 } })
    expect(bitsAfter(...evidence)).toEqual({ X: 1, Y: 0, Z: 0 })
  })

  it('has the four published minimal diagnoses as the cut sets of its conflicts', () => {
    // Minimal conflicts {A1,M1,M2} and {A1,A2,M1,M3}: a diagnosis must break each of them.
    const gates = new Map<string, Gate>([
      ['top', { kind: 'and', inputs: ['first', 'second'] }],
      ['first', { kind: 'or', inputs: ['A1', 'M1', 'M2'] }],
      ['second', { kind: 'or', inputs: ['A1', 'A2', 'M1', 'M3'] }],
    ])
    expect(minimalCutSets({ top: 'top', gates })).toEqual({
      kind: 'found',
      cutSets: [['A1'], ['M1'], ['A2', 'M2'], ['M2', 'M3']],
    })
  })
})
