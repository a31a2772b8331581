import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { settle } from '../../../server/measure/correct/contact.ts'
import { contactAdds, pulls as ofPulls } from '../../../server/measure/reading/touching.ts'

type Probed = readonly [
  touching: Parameters<typeof settle>[1],
  probing: Parameters<typeof settle>[2],
]

const adding = { ...contactAdds, contact: { clean: 0.05, poor: 5 } }
const ohms: Probed = [adding, { width: 0.2, awkward: false }]
const pulls: Probed = [ofPulls, { width: 12, awkward: false }]
const touch = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10) },
  { weight: 1, arbitrary: fc.constant('OL' as const) },
)
const touches = fc.array(touch, { minLength: 1, maxLength: 8 })
const withValue = touches.filter((all) => all.some((each) => each !== 'OL'))

function settled(all: readonly (number | 'OL')[], probing = ohms) {
  const contact = settle(all, ...probing)
  if (contact.kind === 'open') throw new Error('a value was among the touches')
  return contact
}

describe('touches of an ohmmeter', () => {
  it('one is taken as it is, with the doubt of one touch', () => {
    expect(settle([52.5], ...ohms)).toEqual({
      kind: 'steady',
      estimate: 52.5,
      spread: 0,
      used: 1,
      of: 1,
      bySelf: 1,
      doubt: 0.05,
      chanceAllPoor: expect.closeTo(0.2 / 3, 12),
    })
  })

  it('of three, the lowest two that agree are taken', () => {
    expect(settle([52.6, 58.1, 52.5], ...ohms)).toMatchObject({
      kind: 'steady',
      estimate: 52.5,
      spread: expect.closeTo(0.1, 12),
      used: 2,
      of: 3,
      doubt: 0.025,
    })
  })

  it.each([
    ['above it', [52.5, 55.8], 3.3],
    ['above it, the farthest', [52.5, 55.8, 59.5, 53.6], 7],
    ['above it, no more than the whole', [2, 30, 61], 2],
    ['OL', [52.5, 'OL'], 5],
  ] as const)('poor contact: the lowest stands alone, the others %s', (_, all, doubt) => {
    expect(settle(all, ...ohms)).toMatchObject({
      kind: 'poor contact',
      estimate: all[0],
      used: 1,
      of: all.length,
      doubt: expect.closeTo(doubt, 12),
    })
  })

  it('agree again once two of the lowest do, whatever the others were', () => {
    expect(settle(['OL', 52.5, 58, 52.6], ...ohms)).toMatchObject({
      kind: 'steady',
      used: 2,
      of: 4,
    })
  })

  it('are open only if each is OL, the surer the more there are', () => {
    const [one, three] = [settle(['OL'], ...ohms), settle(['OL', 'OL', 'OL'], ...ohms)]
    expect(one).toMatchObject({ kind: 'open', touches: 1 })
    expect(three).toMatchObject({ kind: 'open', touches: 3 })
    expect(one.chanceAllPoor).toBeGreaterThan(0.05)
    expect(three.chanceAllPoor).toBeLessThan(0.001)
  })

  it('of one value need two touches at an ordinary pin, three at an awkward one', () => {
    const chances = (awkward: boolean) =>
      [1, 2, 3].map(
        (n) => settle(Array(n).fill(13), adding, { width: 0.2, awkward }).chanceAllPoor < 0.05,
      )
    expect(chances(false)).toEqual([false, true, true])
    expect(chances(true)).toEqual([false, false, true])
  })

  it('never read higher because one more reads higher', () => {
    fc.assert(
      fc.property(withValue, fc.double({ min: 0, max: 50, noNaN: true }), (all, more) => {
        const before = settled(all)
        expect(settled([...all, before.estimate + more]).estimate).toBe(before.estimate)
        expect(settled([...all, 'OL']).estimate).toBe(before.estimate)
      }),
    )
  })

  it('never leave more doubt for touching again with the same value', () => {
    fc.assert(
      fc.property(withValue, (all) => {
        const before = settled(all)
        const after = settled([...all, before.estimate])
        expect(after.estimate).toBe(before.estimate)
        expect(after.doubt).toBeLessThanOrEqual(before.doubt)
        expect(after.spread).toBeLessThanOrEqual(before.spread)
        expect(after.chanceAllPoor).toBeLessThan(before.chanceAllPoor)
        expect(after.kind).toBe('steady')
      }),
    )
  })

  it('do not care in which order they came', () => {
    fc.assert(
      fc.property(touches, (all) => {
        expect(settle(all.toReversed(), ...ohms)).toEqual(settle(all, ...ohms))
      }),
    )
  })

  it.each([[[]], [[NaN]], [[1, Infinity]]])('of %o are a bug', (none) => {
    expect(() => settle(none, ...ohms)).toThrow(RangeError)
  })
})

describe('pulls of a starter', () => {
  it('of several, the best three are taken', () => {
    expect(settle([104, 60, 112, 108, 101], ...pulls)).toMatchObject({
      kind: 'steady',
      estimate: 108,
      spread: 8,
      used: 3,
      of: 5,
    })
  })

  it('never read lower for one more that is weaker than the best three', () => {
    const three = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 100, max: 110 })))
    fc.assert(
      fc.property(three, fc.integer({ min: 0, max: 99 }), (best, weak) => {
        expect(settled([...best, weak], pulls).estimate).toBe(settled(best, pulls).estimate)
      }),
    )
  })

  it('share their clip: three alike may all be none, but not when it was clipped on anew', () => {
    const probing = { width: 1, awkward: false }
    const chance = (clips: readonly number[]) => {
      const all = clips.map(() => 0)
      return settle(all, ofPulls, { ...probing, clips }).chanceAllPoor
    }
    expect(chance([0, 0, 0])).toBeGreaterThan(chance([0]) / 3)
    expect(chance([0, 1])).toBeLessThan(chance([0]) / 3)
    expect(settle([0, 0, 0], ...pulls)).toMatchObject({ bySelf: 1, used: 3 })
    expect(settle([0, 0, 0], ...ohms)).toMatchObject({ bySelf: 3 })
    const anew = { ...probing, clips: [0, 0, 1] }
    expect(settle([100, 0, 100], ofPulls, anew)).toMatchObject({ bySelf: 2 })
    expect(settle([100, 100, 0], ofPulls, anew)).toMatchObject({ bySelf: 1 })
  })

  it('that do not agree may all have been weak', () => {
    expect(settle([60, 90], ...pulls)).toMatchObject({
      kind: 'poor contact',
      estimate: 90,
      doubt: 30,
    })
  })
})
