import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { belief } from '../../server/diagnosis/belief/belief.ts'
import type { Model } from '../../server/diagnosis/model/model.ts'
import { together } from '../../server/diagnosis/model/stands.ts'
import { rank } from '../../server/diagnosis/plan/next-check.ts'
import { prospects, weights } from '../../server/diagnosis/verdict/explain.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import { modelFromTable, saw } from '../support/tables.ts'

const none = new Set<string>()

/** Three parts and nothing else; each check is right nine times in ten. */
function doubtful(): Model {
  const sure = modelFromTable(
    { winding: 0.5, lead: 0.3, coil: 0.2 },
    {
      ohms: ['open', 'good', 'good'],
      swap: ['same', 'moves', 'same'],
      volts: ['none', 'some', 'some'],
    },
  )
  return {
    ...sure,
    checks: sure.checks.map((check) => ({
      ...check,
      chances: check.chances.map((row) => row.map((chance) => 0.05 + 0.9 * chance)),
    })),
  }
}

describe('belief', () => {
  it('follows Bayes: a reading nineteen times likelier under one part raises its odds nineteenfold', () => {
    const model = doubtful()
    const [winding, lead] = belief(model, [saw(model, 'ohms', 'open')])
    expect(winding! / lead!).toBeCloseTo((0.5 / 0.3) * (0.95 / 0.05), 10)
  })

  it('is not moved by a reading that could not be told', () => {
    const model = doubtful()
    const told = belief(model, [{ check: 'ohms', likelihoods: [1, 1] }])
    for (const [c, p] of told.entries()) expect(p).toBeCloseTo(model.cutSets[c]!.prior, 12)
  })

  it('does not depend on the order of the readings', () => {
    const model = doubtful()
    const all = [
      saw(model, 'ohms', 'open'),
      saw(model, 'swap', 'same'),
      saw(model, 'volts', 'some'),
    ]
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: 3 }), (shuffled) => {
        const there = belief(model, shuffled)
        for (const [c, p] of belief(model, all).entries()) expect(there[c]).toBeCloseTo(p, 12)
      }),
    )
  })

  it('refuses evidence of a check it does not have', () => {
    expect(() => belief(doubtful(), [{ check: 'smell', likelihoods: [1, 0] }])).toThrow(/smell/)
  })
})

describe('walk', () => {
  it('ranks the check that tells most for its minutes first and pays a set-up once', () => {
    const model = doubtful()
    const setups = [{ id: 'cover off', minutes: 8, undo: 0 }]
    const dear: Model = {
      ...model,
      checks: model.checks.map((check) => (check.id === 'swap' ? check : { ...check, setups })),
    }
    const first = rank(dear, belief(dear, []), () => true, together)
    expect(first[0]).toMatchObject({ check: 'swap' })
    expect(first.find(({ check }) => check === 'ohms')).toMatchObject({
      minutes: 9,
    })
    const evidence = [saw(dear, 'ohms', 'open')]
    const later = walk(dear, {
      evidence,
      impossible: none,
      stands: new Map([['cover off', Number.POSITIVE_INFINITY]]),
    })
    expect(later.proposals.find(({ check }) => check === 'volts')).toMatchObject({ minutes: 1 })
  })

  it('names the part once its probability passes the threshold, and keeps what cleared the others', () => {
    const model = doubtful()
    const evidence = [saw(model, 'ohms', 'open'), saw(model, 'volts', 'none')]
    const now = walk(model, { evidence, impossible: none })
    expect(now.step).toMatchObject({ kind: 'named', parts: ['winding'] })
    expect(now.branches.get('coil')).toMatchObject({ cleared: true, clearedBy: 'volts' })
  })

  it('reopens a cleared branch when a later reading speaks for it', () => {
    const model = doubtful()
    const before = [saw(model, 'ohms', 'open'), saw(model, 'volts', 'none')]
    expect(walk(model, { evidence: before, impossible: none }).branches.get('lead')!.cleared).toBe(
      true,
    )
    const after = [...before, saw(model, 'swap', 'moves')]
    expect(walk(model, { evidence: after, impossible: none }).branches.get('lead')!.cleared).toBe(
      false,
    )
  })

  it('never proposes what was answered or cannot be done', () => {
    const model = doubtful()
    const now = walk(model, {
      evidence: [{ check: 'ohms', likelihoods: [1, 1] }],
      impossible: new Set(['swap']),
    })
    expect(now.proposals.map(({ check }) => check)).toEqual(['volts'])
  })

  it('says what it cannot separate and which missing check would', () => {
    const model = doubtful()
    const evidence = [saw(model, 'ohms', 'good'), saw(model, 'volts', 'some')]
    const now = walk(model, { evidence, impossible: new Set(['swap']) })
    expect(now.step).toMatchObject({ kind: 'cannotSeparate', splitBy: 'swap' })
    const group = now.step.kind === 'cannotSeparate' ? now.step.group.map(({ part }) => part) : []
    expect(group.slice(0, 2)).toEqual(['lead', 'coil'])
  })

  it('calls readings contradictory that fit no explanation, and says which fits worst', () => {
    const model = modelFromTable(
      { winding: 0.5, lead: 0.5 },
      { a: ['bad', 'good'], b: ['bad', 'good'], c: ['good', 'bad'], d: ['good', 'bad'] },
    )
    const doubting = {
      ...model,
      checks: model.checks.map((check) => ({
        ...check,
        chances: check.chances.map((row) => row.map((chance) => 0.01 + 0.98 * chance)),
      })),
    }
    const evidence = ['a', 'b', 'c', 'd'].map((id) => saw(doubting, id, 'bad'))
    const now = walk(doubting, { evidence, impossible: none })
    expect(now.step.kind).toBe('contradiction')
    const repeat = now.step.kind === 'contradiction' ? now.step.misfits : []
    expect(repeat).toHaveLength(2)
    for (const { bits } of repeat) expect(bits).toBeCloseTo(Math.log2(0.99 / 0.01), 6)
  })

  it('has that reading made again first whose change would explain most', () => {
    const names = ['a', 'b', 'c', 'd', 'e']
    const sure = modelFromTable(
      { winding: 0.5, lead: 0.5 },
      Object.fromEntries(names.map((name) => [name, ['bad', 'good']])),
    )
    const model = {
      ...sure,
      checks: sure.checks.map((check, i) => ({
        ...check,
        // The last is the surest: as it is, it can hardly be.
        chances: check.chances.map((row) => {
          const off = i === 4 ? 1e-6 : 0.1
          return row.map((chance) => off + (1 - 2 * off) * chance)
        }),
      })),
    }
    const evidence = names.map((id) => saw(model, id, id === 'e' ? 'good' : 'bad'))
    const { step } = walk(model, { evidence, impossible: none })
    expect(step).toMatchObject({ kind: 'contradiction', misfits: [{ check: 'a' }, {}, {}, {}] })
    const [first, ...others] = step.kind === 'contradiction' ? step.misfits : []
    for (const other of others) expect(first!.explains).toBeGreaterThanOrEqual(other.explains)
  })

  it('says of two parts that explain it only together that they do', () => {
    const two = modelFromTable({ both: 0.6, lead: 0.4 }, { ohms: ['same', 'same'] })
    const model = {
      ...two,
      cutSets: two.cutSets.map((cutSet, c) =>
        c === 0 ? { ...cutSet, parts: ['left', 'right'] } : cutSet,
      ),
    }
    const evidence = [{ check: 'ohms', likelihoods: [1] }]
    expect(walk(model, { evidence, impossible: none }).step).toMatchObject({
      kind: 'cannotSeparate',
      together: { parts: ['left', 'right'], probability: 0.6 },
    })
  })

  it('has nobody make a contradictory reading once more that is to stand', () => {
    const sure = modelFromTable(
      { winding: 0.5, lead: 0.5 },
      { a: ['bad', 'good'], b: ['bad', 'good'], c: ['good', 'bad'], d: ['good', 'bad'] },
    )
    const slips = [
      [0.9, 0.1],
      [0.1, 0.9],
    ]
    const model = {
      ...sure,
      checks: sure.checks.map((check) => ({
        ...check,
        slips,
        chances: check.chances.map((row) => row.map((chance) => 0.01 + 0.98 * chance)),
      })),
    }
    const evidence = ['a', 'b', 'c', 'd'].map((id) => saw(model, id, 'bad'))
    const repeats = (impossible: ReadonlySet<string>) => {
      const { step } = walk(model, { evidence, impossible })
      return step.kind === 'contradiction' ? step.misfits : []
    }
    const [first] = repeats(none)
    expect(first!.tells).toBeGreaterThan(0)
    const standing = repeats(new Set([first!.check]))
    expect(standing.map(({ check }) => check)).not.toEqual(repeats(none).map(({ check }) => check))
    expect(standing.at(-1)).toEqual({ ...first!, tells: 0 })
  })

  it('calls a complaint outside the tree when everything in it is found good', () => {
    const model = modelFromTable({ none: 0.1, winding: 0.9 }, { ohms: ['good', 'open'] })
    const now = walk(model, { evidence: [saw(model, 'ohms', 'good')], impossible: none })
    expect(now.step).toEqual({ kind: 'outsideThisTree', probability: 1, again: 'ohms' })
  })
})

describe('explaining', () => {
  it('tells for each outcome how likely it is, what it clears and what it would name', () => {
    const model = modelFromTable({ winding: 0.25, lead: 0.75 }, { ohms: ['open', 'good'] })
    expect(prospects(model, [], 'ohms')).toEqual([
      {
        outcome: 'good',
        probability: 0.75,
        clears: ['winding'],
        names: 'lead',
        leads: { part: 'lead', probability: 1 },
      },
      {
        outcome: 'open',
        probability: 0.25,
        clears: ['lead'],
        names: 'winding',
        leads: { part: 'winding', probability: 1 },
      },
    ])
  })

  it('weighs a reading for a part by its likelihood ratio, most telling first', () => {
    const model = doubtful()
    const evidence = [saw(model, 'swap', 'same'), saw(model, 'ohms', 'open')]
    const [first, second] = weights(model, evidence, 'winding')
    expect(first!.check).toBe('ohms')
    expect(first!.bits).toBeCloseTo(Math.log2(0.95 / 0.05), 10)
    // Of the other parts, the lead (0.3) would have moved and the coil (0.2) not.
    expect(second!.bits).toBeCloseTo(Math.log2(0.95 / ((0.3 * 0.05 + 0.2 * 0.95) / 0.5)), 10)
  })
})
