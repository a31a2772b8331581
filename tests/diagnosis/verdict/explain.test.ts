import { describe, expect, it } from 'vitest'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { prospects } from '../../../server/diagnosis/verdict/explain.ts'
import { walk } from '../../../server/diagnosis/walk.ts'
import { modelFromTable } from '../../support/tables.ts'

/** Two parts, and a check that tells them apart as surely as this. */
function told(sure: number): Model {
  const model = modelFromTable({ a: 0.5, b: 0.5 }, { lamp: [0, 1] })
  const chances = [
    [sure, 1 - sure],
    [1 - sure, sure],
  ]
  return { ...model, checks: model.checks.map((check) => ({ ...check, chances })) }
}

const priced = (model: Model, minutes: number): Model => ({
  ...model,
  wrongMinutes: new Map([
    ['a', minutes],
    ['b', minutes],
  ]),
})

const promised = (model: Model) => prospects(model, [], 'lamp').map(({ names }) => names)
const kept = (model: Model) => {
  const evidence = [{ check: 'lamp', likelihoods: [1, 0] }]
  const { step } = walk(model, { evidence, impossible: new Set() })
  return step.kind === 'named' ? step.parts : step.kind
}

describe('the name that an answer promises', () => {
  it.each([
    ['92 in a hundred on where the parts are cheap', 20, 0.925, 0.915],
    ['93 in a hundred on where they are dear', 200, 0.935, 0.925],
  ])('is given from %s, as the verdict is', (_, minutes, enough, tooLittle) => {
    const surely = priced(told(enough), minutes)
    expect(promised(surely)).toEqual(['a', 'b'])
    expect(kept(surely)).toEqual(['a'])
    const hardly = priced(told(tooLittle), minutes)
    expect(promised(hardly)).toEqual([undefined, undefined])
    expect(kept(hardly)).toBe('cannotSeparate')
  })

  it('is given from 95 in a hundred on where nothing is known of prices', () => {
    expect(promised(told(0.96))).toEqual(['a', 'b'])
    expect(kept(told(0.96))).toEqual(['a'])
    expect(promised(told(0.92))).toEqual([undefined, undefined])
    expect(kept(told(0.92))).toBe('cannotSeparate')
  })
})
