import { describe, expect, it } from 'vitest'
import { together } from '../../../server/diagnosis/model/stands.ts'
import { plan } from '../../../server/diagnosis/plan/plan.ts'
import { modelFromTable } from '../../support/tables.ts'

describe('the planner', () => {
  it('gives the same plan for the same job', () => {
    const model = modelFromTable(
      { a: 0.4, b: 0.3, c: 0.2, d: 0.1 },
      { p: [0, 0, 1, 1], q: [0, 1, 0, 1], r: [0, 1, 1, 1] },
    )
    const once = () => plan(model, [0.4, 0.3, 0.2, 0.1], () => true, together)
    expect(once()).toEqual(once())
  })

  it('lets what asks least of the person come first among checks that come to nearly the same', () => {
    const first = (asking: number) => {
      const model = modelFromTable({ a: 0.5, b: 0.5 }, { measured: [0, 1], asked: [0, 1] })
      const minutes = { measured: 10, asked: asking }
      const effort = { measured: 3, asked: 0 }
      const checks = model.checks.map((check) => ({
        ...check,
        minutes: minutes[check.id as keyof typeof minutes],
        effort: effort[check.id as keyof typeof effort],
      }))
      const { proposals } = plan({ ...model, checks }, [0.5, 0.5], () => true, together)
      return proposals[0]!.check
    }
    expect(first(10.9)).toBe('asked')
    expect(first(11.2)).toBe('measured')
  })

  it('puts off nothing that tells for an easy question that does not earn its minutes', () => {
    const table = modelFromTable({ a: 0.5, b: 0.5 }, { measured: [0, 1], asked: [0, 1] })
    const [measured, asked] = table.checks
    const guessed = {
      chances: [
        [0.52, 0.48],
        [0.48, 0.52],
      ],
      minutes: 0.5,
      effort: 0,
    }
    const checks = [
      { ...measured!, minutes: 10, effort: 3 },
      { ...asked!, ...guessed },
    ]
    const first = (more: object) =>
      plan({ ...table, checks, ...more }, [0.5, 0.5], () => true, together).proposals[0]!.check
    expect(first({})).toBe('asked')
    expect(first({ earns: 0.5 })).toBe('measured')
  })

  it('lets no easy check that tells little earn its minutes by a set-up that the next one needs anyhow', () => {
    const table = modelFromTable({ a: 0.5, b: 0.5 }, { measured: [0, 1], looked: [0, 1] })
    const [measured, looked] = table.checks
    const hot = { id: 'hot', minutes: 15, undo: 0 }
    const chances = [
      [0.52, 0.48],
      [0.48, 0.52],
    ]
    const checks = [
      { ...measured!, minutes: 10, effort: 3, setups: [hot] },
      { ...looked!, chances, minutes: 0.5, effort: 1, setups: [hot] },
    ]
    const first = (more: object) =>
      plan({ ...table, checks, ...more }, [0.5, 0.5], () => true, together).proposals[0]!.check
    expect(first({})).toBe('looked')
    expect(first({ earns: 0.5 })).toBe('measured')
  })

  it('does not ask where no answer would change what is done', () => {
    const model = modelFromTable({ a: 0.99, b: 0.01 }, { p: [0, 1] })
    expect(plan(model, [0.99, 0.01], () => true, together).worthAsking).toBe(false)
  })

  it('names by all that is believed, and not by the part of it that it looks at', () => {
    // Together 0.9979 with the first: what the plan looks at, and in it the first has more than 0.9.
    const likely = Object.fromEntries(Array.from({ length: 23 }, (_, i) => [`b${i}`, 0.0043]))
    const tail = Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`c${i}`, 0.0001]))
    const chances = { ...likely, ...tail, a: 0.8991 }
    const model = modelFromTable(chances, { p: Object.keys(chances).map((name) => +(name < 'b5')) })
    const wrongMinutes = new Map(model.cutSets.flatMap(({ parts }) => parts).map((id) => [id, 10]))
    const belief = model.cutSets.map(({ prior }) => prior)
    expect(Math.max(...belief)).toBeLessThan(0.9)
    const { stopping } = plan({ ...model, wrongMinutes }, belief, () => true, together)
    expect(stopping).toBeGreaterThan(90)
  })

  it('takes nothing for likelier because looking ahead drops what is small', () => {
    // Just short of 0.9, and past it if the 22 were left out. Two checks say next to nothing.
    const few = Object.fromEntries(Array.from({ length: 22 }, (_, i) => [`c${i}`, 0.0004]))
    const model = modelFromTable({ a: 0.897, b: 0.0942, ...few }, { p: [0, 1], q: [0, 1] })
    const unsure = model.cutSets.map((_, c) => (c === 0 ? [0.505, 0.495] : [0.5, 0.5]))
    const checks = model.checks.map((check) => ({ ...check, chances: unsure }))
    const wrongMinutes = new Map(model.cutSets.flatMap(({ parts }) => parts).map((id) => [id, 10]))
    const belief = model.cutSets.map(({ prior }) => prior)
    const { proposals, stopping, worthAsking } = plan(
      { ...model, checks, wrongMinutes },
      belief,
      () => true,
      together,
    )
    expect(stopping).toBeGreaterThan(90)
    expect(proposals[0]!.bits).toBeLessThan(1e-4)
    expect(worthAsking).toBe(false)
  })
})
