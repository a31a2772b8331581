import { setImmediate } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { Figures } from '../../server/health/figures.ts'
import { caseTestability } from '../../server/knowledge/case-testability.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { fewCases } from '../support/few-cases.ts'
import { smallKnowledge } from '../support/small-case.ts'

const silent = (error: unknown) => {
  throw error
}

/** How many cases are worked out by now. */
const found = (knowledge: Knowledge, figures: Figures) =>
  allFits(knowledge).filter((fit) => figures.of(fit).kind === 'found').length

const steps = allFits(fewCases()).reduce((sum, { machine, complaint }) => {
  const knowledge = fewCases()
  const kase = caseFor(knowledge, machine.id, complaint.id)
  return sum + [...caseTestability(knowledge, kase)].length
}, 0)

/** Gives the work more turns than all cases need. */
async function manyTurns(): Promise<void> {
  for (let turn = 0; turn < steps + 20; turn += 1) await setImmediate()
}

describe('the figures of all cases', () => {
  it('are not worked out before somebody asks', async () => {
    const knowledge = fewCases()
    const figures = new Figures(knowledge, silent)
    await manyTurns()
    expect(found(knowledge, figures)).toBe(0)
    figures.workOut()
    await manyTurns()
    expect(found(knowledge, figures)).toBe(allFits(knowledge).length)
  })

  it('are worked out one case after another, with a turn for everybody else between', async () => {
    const knowledge = fewCases()
    const figures = new Figures(knowledge, silent)
    figures.workOut()
    const seen = [found(knowledge, figures)]
    while (seen.at(-1)! < allFits(knowledge).length) {
      await setImmediate()
      seen.push(found(knowledge, figures))
    }
    expect([...new Set(seen)]).toEqual([...Array(allFits(knowledge).length + 1).keys()])
    expect(seen.length).toBeGreaterThanOrEqual(steps)
  })

  it('begin with the case that somebody wants to see, even when another was begun', async () => {
    const knowledge = fewCases()
    const last = allFits(knowledge).at(-1)!
    const figures = new Figures(knowledge, silent)
    figures.workOut()
    for (let turn = 0; turn < 5; turn += 1) await setImmediate()
    figures.workOut(last)
    while (found(knowledge, figures) === 0) await setImmediate()
    expect(figures.of(last).kind).toBe('found')
    await manyTurns()
    expect(found(knowledge, figures)).toBe(allFits(knowledge).length)
  })

  it('are kept for whoever comes next with the same knowledge, and for nobody else', async () => {
    const knowledge = fewCases()
    const first = new Figures(knowledge, silent)
    first.workOut()
    await manyTurns()
    const fit = allFits(knowledge)[0]!
    expect(first.of(fit).kind).toBe('found')
    expect(new Figures(knowledge, silent).of(fit)).toBe(first.of(fit))
    expect(new Figures(fewCases(), silent).of(fit).kind).toBe('waiting')
  })

  it('come no further once they are stopped, and cannot be begun again', async () => {
    const knowledge = fewCases()
    const figures = new Figures(knowledge, silent)
    figures.workOut()
    while (found(knowledge, figures) === 0) await setImmediate()
    figures.stop()
    figures.workOut()
    await manyTurns()
    expect(found(knowledge, figures)).toBe(1)
  })

  it('are reported missing once where they cannot be worked out', async () => {
    // The machine of the small knowledge has parts of kinds that it does not know.
    const reported: string[] = []
    const figures = new Figures(smallKnowledge, (error, name) => {
      reported.push(name)
      expect(error).toBeInstanceOf(Error)
    })
    const [fit] = allFits(smallKnowledge)
    figures.workOut()
    for (let turn = 0; turn < 20; turn += 1) await setImmediate()
    figures.workOut(fit)
    for (let turn = 0; turn < 20; turn += 1) await setImmediate()
    expect(figures.of(fit!).kind).toBe('failed')
    expect(reported).toEqual(['no-spark on wren'])
  })
})
