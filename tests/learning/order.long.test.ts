import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { asManyAs, gainWords } from '../../server/learning/order/gain-words.ts'
import { orderOf } from '../../server/learning/order/order.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const noSpark = () => caseFor(knowledge, 'pedlar-1c', 'no-spark')

describe('the order of the checks', () => {
  it('is worked out once for each case, and names no check twice but to make it once more', async () => {
    const kase = noSpark()
    const order = await orderOf(knowledge, kase)
    expect(await orderOf(knowledge, kase)).toBe(order)
    expect(order.lessons).toHaveLength(6)
    const first = order.lessons.filter(({ again }) => !again).map(({ card }) => card.id)
    expect(new Set(first).size).toBe(first.length)
  })

  it('goes on by the likeliest answer: what it clears is cleared for the next check', async () => {
    const { lessons } = await orderOf(knowledge, noSpark())
    const clears = lessons.slice(0, -1).map((lesson, i) => {
      const cleared = lesson.foreseen[0]!.clears
      const { branches } = lessons[i + 1]!.walk
      for (const name of cleared) expect(branches.get(name)!.cleared, name).toBe(true)
      return cleared.length
    })
    expect(Math.max(...clears)).toBeGreaterThan(0)
  })

  it('takes no rope into the hand after a kick, until the key has been seen', async () => {
    const { lessons } = await orderOf(knowledge, caseFor(knowledge, 'pedlar-1c', 'kicks-back'))
    const key = lessons.findIndex(({ card }) => card.id.startsWith('key-look'))
    const before = key < 0 ? lessons : lessons.slice(0, key)
    expect(before.length).toBeGreaterThan(1)
    expect(before.filter(({ card }) => card.engine !== 'stopped')).toEqual([])
  })

  it('has something to teach of whatever any case asks among its first three checks', async () => {
    const cases = shippedCases()
    expect(cases.length).toBeGreaterThan(50)
    const silent = new Set<string>()
    for (const kase of cases) {
      const { lessons } = await orderOf(knowledge, kase)
      expect(lessons.length, `${kase.machine.id} ${kase.complaint.id}`).toBeGreaterThan(0)
      for (const { card } of lessons.slice(0, 3)) {
        if (card.teach === undefined) silent.add(card.id.replace(/\..*/, ''))
      }
    }
    expect([...silent]).toEqual([])
  })

  it('says in two to five sentences what an old hand would say', () => {
    const taught = [...knowledge.checkKinds.values()].filter(({ teach }) => teach !== undefined)
    expect(taught.length).toBeGreaterThan(45)
    for (const { id, teach = '' } of taught) {
      const sentences = teach.split(/[.?!](?: |$)/).filter(Boolean).length
      expect(sentences, id).toBeGreaterThanOrEqual(2)
      expect(sentences, id).toBeLessThanOrEqual(5)
    }
  })
})

describe('what a check tells, in words', () => {
  const equal = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ part: `part-${i}`, probability: 1 / count }))

  it('counts suspects of the same chance as so many', () => {
    expect(asManyAs(equal(8))).toBeCloseTo(8, 9)
    // By hand: ½, ¼ and ¼ have an entropy of 1.5 bits.
    const uneven = [0.5, 0.25, 0.25].map((probability, i) => ({ part: `part-${i}`, probability }))
    expect(asManyAs(uneven)).toBeCloseTo(2 ** 1.5, 9)
  })

  it('halves the list with one bit', () => {
    expect(gainWords(equal(8), 1)).toBe(
      'Halves the list: on average, what was like 8 suspects is like 4 after it.',
    )
  })

  it.each([
    [0.05, 'Takes a little off the list'],
    [0.3, 'Takes about a fifth off the list'],
    [0.6, 'Takes about a third off the list'],
    [1.6, 'Leaves about a third of the list'],
    [2.5, 'Leaves a quarter of the list or less'],
  ])('says of %d bits: %s', (bits, says) => {
    expect(gainWords(equal(12), bits)).toContain(says)
  })
})
