import { describe, expect, it } from 'vitest'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { isSpokenAgainst } from '../../../server/diagnosis/plan/floors.ts'
import { stakesOf } from '../../../server/diagnosis/plan/stakes.ts'
import { decide } from '../../../server/diagnosis/verdict/verdict.ts'
import { smallCase } from '../../support/small-case.ts'

describe('from what probability on something is named', () => {
  const { nameFrom } = stakesOf({
    ...smallCase.model,
    wrongMinutes: new Map([
      ['cheap', 20],
      ['dear', 200],
    ]),
  })

  it('is more than nine in ten for what is cheap to fit in vain, and more for what is dear', () => {
    expect(nameFrom(['cheap'])).toBe(0.92)
    expect(nameFrom(['dear'])).toBe(0.93)
  })

  it('is most for nothing in this tree: whoever looks elsewhere in vain starts over', () => {
    expect(nameFrom([])).toBe(0.96)
  })

  it('is nine in ten for nothing in this tree once each of its faults has been spoken against', () => {
    expect(nameFrom([], true)).toBe(0.9)
    expect(nameFrom(['dear'], true)).toBe(0.93)
  })
})

describe('a tree of which nine in ten say that the cause is not in it', () => {
  const cutSet = (faults: readonly string[], prior: number) => ({
    faults,
    parts: faults.map((fault) => fault.split('.')[0]!),
    prior,
  })
  const model: Model = {
    ...smallCase.model,
    cutSets: [
      cutSet(['coil.open'], 0.55),
      cutSet(['coil.loose'], 0.03),
      cutSet(['igniter.dead'], 0.02),
      cutSet([], 0.4),
    ],
    wrongMinutes: new Map(),
  }
  const options = { evidence: [{ check: 'any', likelihoods: [1] }], impossible: new Set<string>() }
  const plan = { proposals: [], stopping: 0, worthAsking: false }
  /** What is said where nothing is left to ask. */
  const said = (belief: readonly number[]) =>
    decide({ ...model, checks: [] }, belief, options, plan)

  it('is left where each of its faults has lost', () => {
    const belief = [0.05, 0.024, 0.01, 0.916]
    expect(isSpokenAgainst(model, belief)).toBe(true)
    expect(said(belief)).toMatchObject({ kind: 'outsideThisTree', probability: 0.916 })
  })

  it('is not left while one of them was never looked at, though its part lost with another fault', () => {
    const belief = [0.02, 0.054, 0.01, 0.916]
    expect(isSpokenAgainst(model, belief)).toBe(false)
    expect(said(belief).kind).toBe('cannotSeparate')
  })

  it('costs as little to leave as a name, once each of its parts has lost', () => {
    const { loss } = stakesOf(model)
    const lost = loss([0.07, 0.014, 0.916], [0, 1, 2])
    const gained = loss([0.034, 0.05, 0.916], [0, 1, 2])
    expect(gained - lost).toBeGreaterThan(60)
  })
})
