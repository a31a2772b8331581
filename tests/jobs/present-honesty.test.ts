import { describe, expect, it } from 'vitest'
import { presentRival } from '../../server/jobs/check/rival.ts'
import { comesAndGoes } from '../../server/jobs/readings/coming-and-going.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import { presentVerdict } from '../../server/jobs/verdict/present.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const kase = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'larkfell-2i',
)!

const touch = (value: number) => ({ kind: 'value', value }) as const

/** The twin without a spark, after these touches of these checks. */
function standing(readings: Record<string, readonly [number, ...number[]]> = {}) {
  const opened: JobEvent = {
    kind: 'opened',
    machine: kase.machine.id,
    complaint: kase.complaint.id,
    conditions: {
      where: 'bench',
      air: 20,
      engine: 'cold',
      tools: Object.keys(knowledge.tools.tools),
      meter: 'shop',
    },
    note: '',
  }
  const taken = Object.entries(readings).map(
    ([check, values]): JobEvent => ({
      kind: 'reading',
      check,
      typed: values.join(' '),
      touches: [touch(values[0]), ...values.slice(1).map(touch)],
      manner: { warmth: { kind: 'as the air' } },
    }),
  )
  const events = [opened, ...taken].map((event) => ({ event, at: new Date(2031, 4, 7) }))
  return standingOf(knowledge, {
    job: { id: 1, version: events.length, events },
    folded: fold(events),
    kase,
  })
}

describe('why this check and not the next best', () => {
  it('names the runner-up, what it would tell for its minutes, and both ways to the end', () => {
    const input = standing()
    const [best, rival] = input.walk.proposals
    const says = presentRival(input, best!.check)
    expect(says).toContain(kase.checks.get(rival!.check)!.title.slice(1))
    expect(says).toMatch(/tell/)
    expect(says).toMatch(/Finding the fault takes about/)
  })

  it('is not said of a check that somebody chose', () => {
    const input = standing()
    expect(presentRival(input, input.walk.proposals[3]!.check)).toBe('')
  })
})

describe('a part that passes cold', () => {
  const check = 'winding-resistance.exciter-start.igniter-plug'

  it('is not cleared of a failure that comes with heat, and that is said', () => {
    const says = comesAndGoes(standing({ [check]: [365, 365] }), check)
    expect(says).toMatch(/does not clear a failure that comes only when .*it is hot/)
  })

  it('is not spoken of where it did not pass', () => {
    expect(comesAndGoes(standing({ [check]: [900, 900, 900] }), check)).toBe('')
  })
})

describe('readings that disagree', () => {
  it('name the one that is worth making once more, by what that would change, and lead there', () => {
    const input = contradictory()
    const { step } = input.walk
    if (step.kind !== 'contradiction') throw new Error(`no contradiction: ${step.kind}`)
    const tells = step.misfits.map(({ tells }) => tells)
    expect(tells[0]).toBeGreaterThan(0)
    expect(tells).toEqual([...tells].sort((a, b) => b - a))
    const verdict = presentVerdict(input)!
    const first = kase.checks.get(step.misfits[0]!.check)!
    expect(verdict.says).toContain(`make one more take of “${first.title}” first`)
    expect(verdict.next[0]!.way!.href).toBe(`/jobs/1?take=${encodeURIComponent(first.id)}`)
  })

  /** One winding after the other far too high, until no one fault can be behind them all. */
  function contradictory() {
    const windings = [...kase.checks.values()].filter(
      ({ id, measurand }) => id.startsWith('winding-resistance.') && measurand,
    )
    const readings: Record<string, readonly [number, ...number[]]> = {}
    for (const { id, measurand } of windings) {
      readings[id] = [measurand!.limits.high! * 3]
      const input = standing(readings)
      if (input.walk.step.kind === 'contradiction') return input
    }
    throw new Error('these readings disagree with nothing')
  }
})
