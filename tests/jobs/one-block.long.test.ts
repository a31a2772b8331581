import { expect, it } from 'vitest'
import type { Step } from '../../server/diagnosis/model/walk.ts'
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
    const step = stepAfter(kase, events)
    if (step.kind !== 'ask') break
    const { check, furtherTake } = step.proposal
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

const steps = new WeakMap<Case, Map<string, Step>>()

/** Jobs of one case share their beginnings, so steps are kept by what was done before them. */
function stepAfter(kase: Case, events: readonly JobEvent[]): Step {
  const known = steps.get(kase) ?? new Map<string, Step>()
  steps.set(kase, known)
  const name = JSON.stringify(events)
  const step = known.get(name) ?? stepOf(kase, events)
  known.set(name, step)
  return step
}

function stepOf(kase: Case, events: readonly JobEvent[]): Step {
  const stored = events.map((event) => ({ event, at: new Date(0) }))
  const job = { id: 1, version: stored.length, events: stored }
  return standingOf(knowledge, { job, folded: fold(stored), kase }).walk.step
}

const isQuestion = (kase: Case) => (check: string) => kase.checks.get(check)?.asked === true

/** Of these jobs, those in which somebody is asked after something else was done; so many of them at most. */
function scattered(where: 'bench' | 'trailside', most = jobs.length): readonly string[] {
  const found: string[] = []
  for (const { kase, cutSet, name } of jobs) {
    const asked = checksOnTheWay(kase, cutSet, where).map(isQuestion(kase))
    const last = asked.lastIndexOf(true)
    if (last > asked.indexOf(false) && asked.includes(false)) found.push(name)
    if (found.length === most) break
  }
  return found
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
  expect(scattered('trailside', late.length + 1).length).toBeGreaterThan(late.length)
}, 120_000)
