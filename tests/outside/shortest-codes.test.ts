import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { entropy } from '../support/oracles/entropy.ts'
import { optimalCost, policyCost, type SequencingTest } from '../support/oracles/exact.ts'
import { greedy, huffmanLength } from './sequencing.ts'

/**
 * With every split at hand, the best sequence of tests is a shortest prefix code.
 * Confirmed from public texts that quote them: D. A. Huffman 1952, Proc. IRE 40(9):1098-1101;
 * D. J. C. MacKay 2003, Information Theory, Inference, and Learning Algorithms, examples 5.10, 5.15, 5.17
 * and theorem 5.1 (5.10 is also in Shannon 1948, section 10).
 */
describe('published shortest codes (confirmed in texts that quote them)', () => {
  it.each([
    { from: 'MacKay 5.15', p: [0.25, 0.25, 0.2, 0.15, 0.15], length: 2.3 },
    { from: 'MacKay 5.10', p: [0.5, 0.25, 0.125, 0.125], length: 1.75 },
    {
      from: 'Huffman 1952, binary',
      p: [0.2, 0.18, 0.1, 0.1, 0.1, 0.06, 0.06, 0.04, 0.04, 0.04, 0.04, 0.03, 0.01],
      length: 3.42,
    },
  ])('$from: the exact solver needs $length yes-or-no tests', ({ p, length }) => {
    expect(optimalCost({ priors: p, tests: allSplits(p.length, 2) })).toBeCloseTo(length, 12)
  })

  it('Huffman 1952, four-way: the exact solver needs the mean of the published lengths', () => {
    const p = [0.22, 0.2, 0.18, 0.15, 0.1, 0.08, 0.05, 0.02]
    const lengths = [1, 1, 1, 2, 2, 2, 3, 3]
    const mean = p.reduce((sum, each, i) => sum + each * lengths[i]!, 0)
    expect(optimalCost({ priors: p, tests: allSplits(p.length, 4) })).toBeCloseTo(mean, 12)
  })

  it.each([
    { from: 'MacKay 5.15', p: [0.25, 0.25, 0.2, 0.15, 0.15], bits: 2.2855, digits: 4 },
    { from: 'MacKay 5.10', p: [0.5, 0.25, 0.125, 0.125], bits: 1.75, digits: 12 },
    {
      from: 'MacKay 5.17, the 27 letters',
      p: [
        0.0575, 0.0128, 0.0263, 0.0285, 0.0913, 0.0173, 0.0133, 0.0313, 0.0599, 0.0006, 0.0084,
        0.0335, 0.0235, 0.0596, 0.0689, 0.0192, 0.0008, 0.0508, 0.0567, 0.0706, 0.0334, 0.0069,
        0.0119, 0.0073, 0.0164, 0.0007, 0.1928,
      ],
      bits: 4.11,
      digits: 2,
    },
  ])('$from: the entropy is $bits bits', ({ p, bits, digits }) => {
    expect(entropy(p)).toBeCloseTo(bits, digits)
  })
})

describe('bounds on the expected number of tests (MacKay, theorem 5.1)', () => {
  const priors = (max: number) =>
    fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 2, maxLength: max })

  it('all splits at hand: optimum = Huffman, from H to below H + 1', () => {
    fc.assert(
      fc.property(priors(7), (p) => {
        const optimum = optimalCost({ priors: p, tests: allSplits(p.length, 2) })
        expect(optimum).toBeCloseTo(huffmanLength(p), 12)
        expect(optimum).toBeGreaterThan(entropy(p) - 1e-12)
        expect(optimum).toBeLessThan(entropy(p) + 1)
      }),
      { numRuns: 60 },
    )
  })

  it('some splits at hand: H ≤ Huffman ≤ optimum ≤ greedy', () => {
    let dearer = 0
    const splits = fc.array(fc.integer({ min: 1, max: 126 }), { minLength: 2, maxLength: 6 })
    fc.assert(
      fc.property(priors(7), splits, (p, chosen) => {
        // One test for each state keeps every state within reach.
        const masks = [...p.map((_, i) => 1 << i), ...chosen]
        const tests = masks.map((mask) => ({ cost: 1, outcomes: p.map((_, i) => (mask >> i) & 1) }))
        const model = { priors: p, tests }
        const optimum = optimalCost(model)
        const byGain = policyCost(model, greedy(model))
        expect(huffmanLength(p)).toBeGreaterThan(entropy(p) - 1e-12)
        expect(optimum).toBeGreaterThan(huffmanLength(p) - 1e-12)
        expect(byGain).toBeGreaterThan(optimum - 1e-12)
        if (byGain > optimum + 1e-9) dearer += 1
      }),
      { numRuns: 200, seed: 1 },
    )
    expect(dearer).toBeGreaterThan(0)
  })
})

/** MacKay 2003, section 4.1: the submarine on 64 squares; confirmed from chapter notes that quote it. */
it('a submarine on 64 squares is worth 6 bits, and the first miss 0.0227 of them (confirmed)', () => {
  const hidden = (squares: number) => entropy(Array<number>(squares).fill(1))
  expect(hidden(64)).toBe(6)
  expect(hidden(64) - hidden(63)).toBeCloseTo(0.0227, 4)
})

/** Every way to split n states into at most `ways` groups, the groups without order. */
function allSplits(n: number, ways: number): SequencingTest[] {
  let splits: number[][] = [[]]
  for (let i = 0; i < n; i += 1) {
    splits = splits.flatMap((outcomes) => {
      const used = Math.max(-1, ...outcomes) + 1
      return Array.from({ length: Math.min(used + 1, ways) }, (_, group) => [...outcomes, group])
    })
  }
  return splits.map((outcomes) => ({ cost: 1, outcomes }))
}
