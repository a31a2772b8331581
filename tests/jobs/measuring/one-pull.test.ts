import { describe, expect, it } from 'vitest'
import { caseFor } from '../../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../../support/knowledge.ts'
import { chanceThatFailed, shippedJob } from '../../support/shipped-job.ts'

const machine = 'larkfell-2i'
const complaint = 'no-spark'
const kase = caseFor(shippedKnowledge(), machine, complaint)

/** Every winding of the twin, read with one pull that gives this share of its low limit. */
function pulled(share: number, count = 8): Readonly<Record<string, string>> {
  const checks = [...kase.checks.values()].filter(({ id }) => id.startsWith('peak-voltage.'))
  return Object.fromEntries(
    checks
      .slice(0, count)
      .map(({ id, measurand }) => [id, (measurand!.limits.low! * share).toFixed(2)]),
  )
}

describe('peak voltages of one slow pull', () => {
  it('leave the flywheel alone where each of them is undecided', () => {
    const readings = pulled(0.85)
    const standing = shippedJob({ machine, complaint }, readings)
    const decisions = [...standing.judged.values()].map(({ measured }) => measured!.decision)
    expect(decisions).toEqual(Object.keys(readings).map(() => 'undecided'))
    expect(decisions.length).toBeGreaterThanOrEqual(7)
    expect(standing.walk.step.kind).toBe('ask')
    expect(chanceThatFailed(standing, 'flywheel')).toBeLessThan(0.5)
  })

  it('accuse it where no pull is as slow as that', () => {
    const standing = shippedJob({ machine, complaint }, pulled(0.4))
    expect(chanceThatFailed(standing, 'flywheel')).toBeGreaterThan(0.95)
  })

  it('accuse one winding where it alone is low', () => {
    const [first, ...others] = Object.entries(pulled(1))
    const low = [first![0], String(Number(first![1]) * 0.4)]
    const standing = shippedJob({ machine, complaint }, Object.fromEntries([...others, low]))
    const before = shippedJob({ machine, complaint }, Object.fromEntries([low]))
    const part = kase.checks.get(first![0])!.part!
    expect(chanceThatFailed(standing, part)).toBeGreaterThan(chanceThatFailed(before, part))
    expect(chanceThatFailed(standing, 'flywheel')).toBeLessThan(0.02)
  })
})

describe('two windings read with one pull', () => {
  const exciter = 'peak-voltage.exciter-start.igniter-plug'
  const pickup = 'peak-voltage.pickup-left.igniter-plug'

  it('clear each other where both are as low as one pull makes them', () => {
    const both = shippedJob({ machine, complaint }, { [exciter]: '100', [pickup]: '5.5' })
    const one = shippedJob({ machine, complaint }, { [exciter]: '100' })
    expect(chanceThatFailed(both, 'exciter-start')).toBeLessThan(
      chanceThatFailed(one, 'exciter-start'),
    )
  })

  it('are read at a speed of their own each where that was measured', () => {
    const job = { machine, complaint }
    const known = shippedJob(job, { [exciter]: '100' }, 400).judged.get(exciter)!
    expect(known.shared).toBeUndefined()
    const unknown = shippedJob(job, { [exciter]: '100' }).judged.get(exciter)!
    expect(unknown.shared!.of).toBe('pull')
  })
})
