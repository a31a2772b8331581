import { describe, expect, it } from 'vitest'
import { belief, checkNamed } from '../../server/diagnosis/belief/belief.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const on = (complaint: string) => caseFor(shippedKnowledge(), 'freshet-4d', complaint)
/** Cylinders 2 and 3 hang on the two towers of one coil. */
const dead = on('one-cylinder-dead')

const cutSetOf = ({ model }: Case, ...faults: readonly string[]) =>
  model.cutSets.findIndex((each) => each.faults.join() === faults.join())

function chance(fault: string, check: string, outcome: string): number {
  const { chances, outcomes } = checkNamed(dead.model, check)
  return chances[cutSetOf(dead, fault)]![outcomes.indexOf(outcome)]!
}

/** Probability of each part once these outcomes came back. */
function suspects({ model }: Case, seen: Readonly<Record<string, string>>) {
  const evidence = Object.entries(seen).map(([check, outcome]) => ({
    check,
    likelihoods: checkNamed(model, check).outcomes.map((each) => (each === outcome ? 1 : 0)),
  }))
  const beliefs = belief(model, evidence)
  return (...parts: readonly string[]) =>
    model.cutSets.reduce(
      (sum, each, c) => sum + (parts.includes(each.parts.join()) ? beliefs[c]! : 0),
      0,
    )
}

describe('a lead or a cap on one tower of a coil with two', () => {
  it.each(['lead-2.leaking', 'cap-2.leaking'])('with %s takes its own cylinder alone', (fault) => {
    expect(chance(fault, 'exhaust-warmth.two', 'cold')).toBeGreaterThan(0.85)
    expect(chance(fault, 'exhaust-warmth.three', 'hot')).toBeGreaterThan(0.9)
    expect(chance(fault, 'spark-on-tester.two', 'spark')).toBeLessThan(0.3)
    expect(chance(fault, 'spark-on-tester.three', 'spark')).toBeGreaterThan(0.85)
    expect(chance(fault, 'leaks-of-one-side.three', 'sparks')).toBeLessThan(0.2)
  })

  it.each(['lead-2.broken', 'cap-2.open', 'cap-2.loose', 'cap-2.burnt-high'])(
    'with %s takes the other cylinder in some machines, and leaves it in others',
    (fault) => {
      expect(chance(fault, 'exhaust-warmth.two', 'cold')).toBeGreaterThan(0.85)
      for (const [check, outcome] of [
        ['exhaust-warmth.three', 'hot'],
        ['spark-on-tester.three', 'spark'],
      ] as const) {
        expect(chance(fault, check, outcome)).toBeGreaterThan(0.25)
        expect(chance(fault, check, outcome)).toBeLessThan(0.6)
      }
    },
  )

  it('follows its cap where that changes places', () => {
    expect(chance('cap-2.leaking', 'swap-caps.two.cap-1', 'spark')).toBeGreaterThan(0.85)
    expect(chance('cap-1.leaking', 'swap-caps.two.cap-1', 'spark')).toBeLessThan(0.3)
    expect(chance('cap-1.leaking', 'swap-caps.three.cap-1', 'spark')).toBeLessThan(0.3)
  })

  it('takes all four sparks with one more leak nowhere', () => {
    const noSpark = on('no-spark')
    expect(cutSetOf(noSpark, 'lead-1.broken', 'lead-2.broken')).toBeGreaterThan(-1)
    expect(cutSetOf(noSpark, 'lead-1.leaking', 'lead-2.leaking')).toBe(-1)
  })

  it('has spared no cylinder where there is no spark at any', () => {
    const { model } = on('no-spark')
    const both = model.cutSets.findIndex(
      ({ faults }) => faults.join() === 'lead-1.broken,lead-2.broken',
    )
    const { chances, outcomes } = checkNamed(model, 'spark-on-tester.four')
    expect(chances[both]![outcomes.indexOf('spark')]).toBeLessThan(0.25)
  })

  it('is not cleared by a twin that fires, and the cylinder not named by one', () => {
    const seen = {
      'ask-which-cylinder': 'two',
      'spark-on-tester.three': 'spark',
      'new-plug-runs.two': 'dead',
      'exhaust-warmth.one': 'hot',
      'exhaust-warmth.two': 'cold',
      'exhaust-warmth.three': 'hot',
      'exhaust-warmth.four': 'hot',
      'swap-plugs.three.plug-2': 'fires',
    }
    const asFar = suspects(dead, seen)
    expect(asFar('cylinder-2')).toBeLessThan(0.75)
    expect(asFar('lead-2', 'cap-2')).toBeGreaterThan(0.2)
    // What tells them apart is the spark at this very cap.
    expect(suspects(dead, { ...seen, 'spark-on-tester.two': 'none' })('cylinder-2')).toBeLessThan(
      0.2,
    )
    const sparks = suspects(dead, { ...seen, 'spark-on-tester.two': 'spark' })
    expect(sparks('lead-2', 'cap-2')).toBeLessThan(0.1)
    // And from what the list does not hold, a look into its inlet.
    expect(sparks('cylinder-2')).toBeLessThan(0.8)
    const looked = { ...seen, 'spark-on-tester.two': 'spark', 'inlet-look.cylinder-2': 'faulty' }
    expect(suspects(dead, looked)('cylinder-2')).toBeGreaterThan(0.9)
  })
})
