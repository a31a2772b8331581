import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { belief } from '../../../server/diagnosis/belief/belief.ts'
import { asReadElsewhere } from '../../../server/diagnosis/belief/elsewhere.ts'
import { withTake } from '../../../server/diagnosis/belief/takes.ts'
import type { Check, Evidence, Model } from '../../../server/diagnosis/model/model.ts'

const outcomes = ['spark', 'weak', 'none']
/** One take in twenty-five slips. */
const slips = outcomes.map((_, s) => outcomes.map((_, o) => (s === o ? 0.96 : 0.02)))

/** The igniter is dead, or the exciter weak: both show at every cylinder. A coil shows at its own. */
const dead = [0.02, 0.06, 0.92]
const weakened = [0.06, 0.44, 0.5]
const well = [0.94, 0.04, 0.02]
const coil = [0.17, 0.33, 0.5]

const sparkAt = (place: string, own: readonly (readonly number[])[], alike?: string): Check => ({
  id: `spark.${place}`,
  minutes: 1,
  setups: [],
  outcomes,
  chances: [dead, weakened, ...own],
  slips,
  ...(alike && { alike }),
})

const fault = (part: string) => ({ faults: [`${part}.bad`], parts: [part] })

/** Three cylinders, with a coil each. */
function engine(alike?: string): Model {
  const places = ['one', 'two', 'three']
  return {
    tree: { top: 'dead', gates: new Map() },
    cutSets: ['igniter', 'exciter', ...places].map((part, i) => ({
      ...fault(part),
      prior: [0.3, 0.3, 0.2, 0.1, 0.1][i]!,
    })),
    checks: places.map((place) =>
      sparkAt(
        place,
        places.map((each) => (each === place ? coil : well)),
        alike,
      ),
    ),
  }
}

const read = (model: Model, ...answers: readonly string[]): readonly Evidence[] =>
  answers.reduce<readonly Evidence[]>(
    (evidence, answer, i) => withTake(evidence, model.checks[i]!, outcomes.indexOf(answer)),
    [],
  )
const ratio = (model: Model, evidence: readonly Evidence[]) => {
  const [igniter, exciter] = belief(model, evidence)
  return igniter! / exciter!
}

describe('one spark, looked at on three cylinders', () => {
  it('counts a little more than once for a cause that they share', () => {
    const model = engine('spark')
    const once = ratio(model, read(model, 'none'))
    expect(once).toBeCloseTo(0.92 / 0.5, 6)
    const thrice = ratio(model, read(model, 'none', 'none', 'none'))
    expect(thrice).toBeGreaterThan(once)
    // Only what the second and third look rule out of slips.
    expect(thrice).toBeLessThan(1.15 * once)
  })

  it('would have counted three times without that', () => {
    const model = engine()
    expect(ratio(model, read(model, 'none', 'none', 'none'))).toBeCloseTo((0.92 / 0.5) ** 3, 6)
  })

  it('counts in full for a cause at one of them', () => {
    const [together, apart] = [engine('spark'), engine()].map((model) => {
      const [igniter, , one, two] = belief(model, read(model, 'none', 'spark'))
      return { igniter, one, two }
    })
    expect(apart!.one).toBeGreaterThan(0.8)
    expect(together!.one).toBeGreaterThan(0.8)
    expect(together!.two).toBeLessThan(0.05)
  })

  it('is weighed alike in whatever order it was looked at', () => {
    const model = engine('spark')
    fc.assert(
      fc.property(
        fc.shuffledSubarray([0, 1, 2], { minLength: 2 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        (order, answers) => {
          const taken = (places: readonly number[]) =>
            places.reduce<readonly Evidence[]>(
              (evidence, at) => withTake(evidence, model.checks[at]!, answers[at]!),
              [],
            )
          const there = belief(model, taken(order))
          const back = belief(model, taken(order.toReversed()))
          for (const [c, p] of there.entries()) expect(p).toBeCloseTo(back[c]!, 9)
        },
      ),
    )
  })

  it('is foreseen elsewhere as it was seen: that look promises less', () => {
    const model = engine('spark')
    const [two] = asReadElsewhere(model, read(model, 'none'))
    expect(two!.id).toBe('spark.two')
    const [ofIgniter, ofExciter, , ofOwnCoil] = two!.chances
    expect(ofExciter![2]).toBeGreaterThan(0.9)
    expect(ofIgniter![2]).toBeGreaterThan(0.9)
    // The coil of the second cylinder has another row there than at the first.
    expect(ofOwnCoil).toEqual(coil)
  })
})
