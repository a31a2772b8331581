import fc from 'fast-check'
import { expect, it } from 'vitest'
import { afterTrial } from '../../../server/diagnosis/belief/after-trial.ts'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { modelFromTable } from '../../support/tables.ts'

const { tree, checks } = modelFromTable({ none: 0.1, coil: 0.9 }, { ohms: ['good', 'open'] })

const model: Model = {
  tree,
  checks,
  cutSets: [
    { parts: ['plug'], faults: ['plug.fouled'], prior: 0.5 },
    { parts: ['plug'], faults: ['plug.bridged'], prior: 0.1 },
    { parts: ['coil'], faults: ['coil.open'], prior: 0.3 },
    { parts: [], faults: [], prior: 0.1 },
  ],
}

const inVain = (faults: readonly string[], works = 1) => ({ faults, works, helped: false })

it('leaves what was put right in vain with the chance that the work went wrong: by Bayes’ rule', () => {
  const { cutSets } = afterTrial(model, inVain(['plug.fouled']), 0.12)
  const total = 0.5 * 0.12 + 0.1 + 0.3 + 0.1
  expect(cutSets.map(({ prior }) => prior)).toEqual(
    [0.5 * 0.12, 0.1, 0.3, 0.1].map((weight) => expect.closeTo(weight / total, 12)),
  )
})

it('weighs what was tried by how often that works and how often it runs anyway', () => {
  const tried = { faults: ['plug.fouled', 'plug.bridged'], works: 0.9, helped: true }
  const { cutSets } = afterTrial(model, tried, 0.12)
  const total = 0.6 * 0.9 + 0.4 * 0.12
  expect(cutSets.map(({ prior }) => prior)).toEqual(
    [0.5 * 0.9, 0.1 * 0.9, 0.3 * 0.12, 0.1 * 0.12].map((weight) =>
      expect.closeTo(weight / total, 12),
    ),
  )
  const [fouled] = afterTrial(model, { ...tried, helped: false }, 0.12).cutSets
  const left = 1 - 0.9 * 0.88
  expect(fouled!.prior).toBeCloseTo((0.5 * left) / (0.6 * left + 0.4), 12)
})

it('adds up to 1 whatever was put right, and is the same model where nothing was', () => {
  expect(afterTrial(model, inVain([]), 0.12)).toBe(model)
  const faults = fc.subarray(model.cutSets.flatMap((each) => each.faults))
  fc.assert(
    fc.property(faults, fc.double({ min: 0.01, max: 1, noNaN: true }), (cured, astray) => {
      const { cutSets } = afterTrial(model, inVain(cured), astray)
      expect(cutSets.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 10)
    }),
  )
})

it('is one model for the same faults, so that what is arranged once per model is arranged once', () => {
  const once = afterTrial(model, inVain(['coil.open']), 0.12)
  expect(afterTrial(model, inVain(['coil.open']), 0.12)).toBe(once)
  expect(afterTrial(model, inVain(['coil.open']), 0.2)).not.toBe(once)
})
