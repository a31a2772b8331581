import { expect, it } from 'vitest'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import type { Case } from '../../server/knowledge/case.ts'
import type { Touches } from '../../server/measure/reading/reading.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()

/** The checks of a job on which every check comes out as it most often does with this cause, up to the verdict. */
function checksOnTheWay(kase: Case, cutSet: number, where: 'bench' | 'trailside'): string[] {
  const tools = Object.entries(knowledge.tools.tools)
    .filter(([, { usual }]) => usual.includes('bench'))
    .map(([id]) => id)
  const opened: JobEvent = {
    kind: 'opened',
    machine: kase.machine.id,
    complaint: kase.complaint.id,
    conditions: { where, air: 20, engine: 'cold', tools, meter: 'hand' },
    note: '',
  }
  const events: JobEvent[] = [opened]
  const made: string[] = []
  // What is measured is left untold: the order of questions is looked for, and no verdict.
  while (made.length < 25) {
    const stored = events.map((event) => ({ event, at: new Date(0) }))
    const job = { id: 1, version: stored.length, events: stored }
    const { walk } = standingOf(knowledge, { job, folded: fold(stored), kase })
    if (walk.step.kind !== 'ask') break
    const { check, furtherTake } = walk.step.proposal
    const { outcomes, answers } = kase.checks.get(check)!
    const row = kase.model.checks.find(({ id }) => id === check)!.chances[cutSet]!
    const outcome = outcomes[row.indexOf(Math.max(...row))]!
    const touches: Touches = [
      answers ? { kind: 'answer', answer: outcome } : { kind: 'could-not-tell' },
    ]
    const manner = { warmth: { kind: 'as the air' } } as const
    const one = { check, typed: '', touches }
    events.push(furtherTake ? { kind: 'take', ...one } : { kind: 'reading', ...one, manner })
    made.push(check)
  }
  return made
}

const isQuestion = (kase: Case) => (check: string) => kase.checks.get(check)?.asked === true

/** Of these jobs, those in which somebody is asked after something else was done. */
function scattered(where: 'bench' | 'trailside'): readonly string[] {
  return jobs.flatMap(({ kase, cutSet, name }) => {
    const asked = checksOnTheWay(kase, cutSet, where).map(isQuestion(kase))
    const last = asked.lastIndexOf(true)
    return last > asked.indexOf(false) && asked.includes(false) ? [name] : []
  })
}

/** The likeliest cause of every case, and one that is not so likely. */
const jobs = shippedCases().flatMap((kase) => {
  const ranked = kase.model.cutSets
    .map(({ prior, faults }, cutSet) => ({ prior, cutSet, name: faults.join() }))
    .sort((a, b) => b.prior - a.prior)
  return [ranked[0]!, ranked[Math.floor(ranked.length / 4)]!].map(({ cutSet, name }) => ({
    kase,
    cutSet,
    name: `${kase.machine.id} ${kase.complaint.id} ${name}`,
  }))
})

it('asks an owner at the bench in one block, before anything else is done, in nearly every job', () => {
  const late = scattered('bench')
  expect(jobs.length).toBeGreaterThan(200)
  expect(late.length, late.join('\n')).toBeLessThan(jobs.length / 8)
  // Away from the bench they stand beside it, and come when they tell most.
  expect(scattered('trailside').length).toBeGreaterThan(late.length)
}, 120_000)
