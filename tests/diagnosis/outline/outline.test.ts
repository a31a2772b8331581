import { describe, expect, it } from 'vitest'
import { belief, checkNamed } from '../../../server/diagnosis/belief/belief.ts'
import { likeliest } from '../../../server/diagnosis/belief/likeliest.ts'
import { withTake } from '../../../server/diagnosis/belief/takes.ts'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { outline } from '../../../server/diagnosis/outline/drawn.ts'
import type { Ending, Stage } from '../../../server/diagnosis/outline/outline.ts'
import { toTheEnd } from '../../../server/diagnosis/testability/steps.ts'
import { typicalWalks } from '../../../server/diagnosis/testability/typical-walks.ts'
import { shippedCases } from '../../support/knowledge.ts'
import { misleadingModels } from '../../support/small-models.ts'
import { modelFromTable } from '../../support/tables.ts'

const nothing = new Set<string>()
const options = { impossible: () => nothing, always: nothing, enough: 0.8, sureFrom: 0.8 }
const shipped = shippedCases().find(({ complaint }) => complaint.id === 'dead-lights')!.model
const models: readonly Model[] = [...misleadingModels(60, 41), shipped]

/** Where an explanation comes out, by its likeliest answers. */
function endOf(model: Model, stage: Stage, explanation: number): Ending {
  if (stage.kind === 'ending') return stage
  const outcome = likeliest(checkNamed(model, stage.check).chances[explanation]!)
  const next = stage.answers.find((answer) => answer.outcome === outcome)
  expect(next, `${stage.check} has no ${outcome}`).toBeDefined()
  return endOf(model, next!.next, explanation)
}

const endings = (stage: Stage): Ending[] =>
  stage.kind === 'ending' ? [stage] : stage.answers.flatMap(({ next }) => endings(next))

const splits = (stage: Stage): string[] =>
  stage.kind === 'ending' ? [] : [stage.check, ...stage.answers.flatMap(({ next }) => splits(next))]

describe('a walk drawn ahead', () => {
  it('ends each explanation as its typical walk ends', () => {
    let compared = 0
    for (const model of models) {
      const drawn = outline(model, options)
      const followed = drawn.followed.map(({ explanation }) => explanation)
      const walks = toTheEnd(typicalWalks(model, followed, nothing))
      for (const explanation of followed) {
        const ending = endOf(model, drawn.first, explanation)
        expect(ending.end).toEqual(walks.get(explanation)!.end)
        expect(ending.explanations).toContain(explanation)
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(100)
  })

  it('shares out all of the probability, and follows until enough of it is named', () => {
    for (const model of models) {
      const { shares, followed, left } = outline(model, options)
      const { named, grouped, outside, astray } = shares
      expect(named + grouped + outside + astray + shares.left).toBeCloseTo(1, 9)
      const priorOf = (all: readonly number[]) =>
        all.reduce((sum, c) => sum + model.cutSets[c]!.prior, 0)
      const total = priorOf([...followed.map(({ explanation }) => explanation), ...left])
      expect(priorOf(left) / total).toBeCloseTo(shares.left, 9)
      // Nothing is left while there is not enough.
      if (left.length > 0) expect(named + grouped + outside).toBeGreaterThanOrEqual(0.8)
      const least = Math.min(
        ...followed.map(({ explanation }) => model.cutSets[explanation]!.prior),
      )
      for (const c of left) expect(model.cutSets[c]!.prior).toBeLessThanOrEqual(least)
    }
  })

  it('is as sure of each end as asked for, or as sure as its whole walk is', () => {
    const drawn = outline(shipped, options)
    const walks = toTheEnd(
      typicalWalks(
        shipped,
        drawn.followed.map(({ explanation }) => explanation),
        nothing,
      ),
    )
    const ends = endings(drawn.first).filter(({ end }) => end.kind === 'named')
    expect(ends.length).toBeGreaterThan(4)
    for (const { end, explanations, before, after } of ends) {
      const parts = end.kind === 'named' ? end.parts.join() : ''
      const whole = belief(shipped, walks.get(explanations[0]!)!.evidence)
      const sure = shipped.cutSets.reduce(
        (sum, each, c) => (each.parts.join() === parts ? sum + whole[c]! : sum),
        0,
      )
      expect(after).toBeGreaterThanOrEqual(Math.min(0.8, sure) - 1e-9)
      expect(after).toBeGreaterThanOrEqual(before)
    }
    expect(ends.filter(({ sure }) => sure.length > 0).length).toBeGreaterThan(0)
  })

  it('says of an end what its readings make of it', () => {
    const { first } = outline(shipped, options)
    const check = (stage: Stage, evidence: Parameters<typeof belief>[1]): void => {
      if (stage.kind === 'split') {
        for (const { outcome, next } of stage.answers) {
          check(next, withTake(evidence, checkNamed(shipped, stage.check), outcome))
        }
        return
      }
      const all = stage.sure.reduce(
        (sum, each) => withTake(sum, checkNamed(shipped, each.check), each.outcome),
        evidence,
      )
      const [likeliestPart] = stage.suspects
      const now = belief(shipped, all)
      const share = now.reduce(
        (p, b, c) => (shipped.cutSets[c]!.parts.includes(likeliestPart!.part ?? '') ? p + b : p),
        0,
      )
      if (likeliestPart!.part !== null) expect(likeliestPart!.probability).toBeCloseTo(share, 9)
    }
    check(first, [])
    expect(endings(first).length).toBeGreaterThan(3)
  })

  it('leaves out what all answer alike, but for what always has to stand', () => {
    const { first, followed } = outline(shipped, options)
    const made = splits(first)
    const walks = toTheEnd(
      typicalWalks(
        shipped,
        followed.map(({ explanation }) => explanation),
        nothing,
      ),
    )
    const passed = [...walks.values()]
      .flatMap(({ evidence }) => evidence.map(({ check }) => check))
      .filter((check) => !made.includes(check))
    expect(passed.length).toBeGreaterThan(3)
    const always = new Set(passed.slice(0, 1))
    expect(splits(outline(shipped, { ...options, always }).first)).toContain(passed[0])
  })

  it('asks for nothing that is not possible yet', () => {
    const model = modelFromTable(
      { left: 0.4, middle: 0.3, right: 0.3 },
      { quick: [0, 1, 2], first: [0, 0, 1], second: [0, 1, 1] },
    )
    const [start] = splits(outline(model, options).first)
    expect(start).toBe('quick')
    const barred = outline(model, { ...options, impossible: notBefore('first', ['quick']) })
    expect(splits(barred.first)[0]).not.toBe('quick')
    expect(splits(barred.first).length).toBeGreaterThan(0)
  })

  it('comes out the same every time', () => {
    for (const model of models.slice(0, 10)) {
      expect(JSON.stringify(outline(model, options).first)).toBe(
        JSON.stringify(outline(structuredClone(model), options).first),
      )
    }
  })
})

/** These checks are not possible before that one was made. */
const notBefore =
  (first: string, others: readonly string[]) => (evidence: readonly { readonly check: string }[]) =>
    evidence.some(({ check }) => check === first) ? nothing : new Set(others)
