import { describe, expect, it } from 'vitest'
import { toTheEnd } from '../../server/diagnosis/testability/steps.ts'
import type { Testability } from '../../server/diagnosis/testability/testability.ts'
import type { Standing } from '../../server/health/figures.ts'
import { presentBoxes, presentNeverPay } from '../../server/health/present-case.ts'
import { presentHealth } from '../../server/health/present-health.ts'
import { presentTotals } from '../../server/health/present-totals.ts'
import { share } from '../../server/health/words.ts'
import { type CaseTestability, caseTestability } from '../../server/knowledge/case-testability.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { fewCases } from '../support/few-cases.ts'
import { plain } from '../support/plain.ts'
import { smallCase } from '../support/small-case.ts'

const all: Testability = {
  faults: 4,
  detected: 1,
  isolated: [1, 1, 1],
  minutes: 5,
  groups: [],
  missed: [],
  neverAsked: [],
}
const some: Testability = {
  ...all,
  detected: 0.8,
  isolated: [0.5, 0.75, 1],
  groups: [
    { fault: 'exciter.open', parts: ['exciter', 'igniter'] },
    { fault: 'coil.open', parts: ['coil', 'igniter', 'exciter'] },
    { fault: 'exciter.turns', parts: ['igniter', 'exciter'] },
  ],
  missed: ['igniter.dead'],
}
const found: CaseTestability = {
  checks: 4,
  full: all,
  at: { bench: all, trailside: some },
  neverPay: ['exciter.resistance', 'spark'],
}

describe('a share', () => {
  it.each([
    [1, '100 %'],
    [1 - 1e-12, '100 %'],
    [0.9996, '>99.9 %'],
    [0.9994, '99.9 %'],
    [0.5, '50.0 %'],
    [0.0004, '<0.1 %'],
    [0, '0 %'],
  ])('is all or nothing only where it is so: %d', (part, said) => {
    expect(plain(share(part))).toBe(said)
  })
})

describe('the page of a case', () => {
  const [full, bench, trailside] = presentBoxes(smallCase, found)

  it('says of a box that leaves nothing open that it does not', () => {
    for (const box of [full!, bench!]) {
      expect(box.says).toBe('Every fault is found, and its part told from every other.')
      expect([...box.groups, ...box.missed]).toEqual([])
    }
    expect(trailside!.says).toBe('')
  })

  it('names each group once, in words, with all faults that end in it', () => {
    expect(trailside!.groups).toEqual([
      {
        parts: 'Start exciter or Igniter',
        faults:
          'Ends here: Start exciter is open somewhere in the winding; Start exciter has shorted turns.',
      },
      {
        parts: 'Ignition coil, Igniter or Start exciter',
        faults: 'Ends here: Ignition coil is open.',
      },
    ])
    expect(trailside!.figures.at(-1)).toEqual({ label: 'Groups', value: '2' })
  })

  it('names the faults that are missed', () => {
    expect(trailside!.missed).toEqual(['Igniter gives no pulse'])
  })

  it('lists checks that never pay by title, and by place where they have one', () => {
    expect(presentNeverPay(smallCase, found)).toEqual({
      says: '2 of 4 checks are proposed for no fault and no pair of faults, with none of these tool boxes.',
      checks: [
        { title: 'Resistance of the start exciter', place: 'the stator plug, pins 1 and 2' },
        { title: 'Spark on the tester', place: '' },
      ],
    })
    const one = presentNeverPay(smallCase, { ...found, neverPay: ['spark'] })
    expect(one.says).toMatch(/^1 of 4 checks is proposed/)
    const none = presentNeverPay(smallCase, { ...found, neverPay: [] })
    expect(none).toEqual({
      says: 'Each of the 4 checks is proposed for some fault or pair of faults.',
      checks: [],
    })
  })
})

describe('the totals', () => {
  it('count each case alike, and say how many are in them', () => {
    const other = { ...found, full: some, checks: 1400 }
    expect(plain(presentTotals([found, other], 3))).toEqual([
      'So far, in 2 of 3 cases, a complaint on a machine each, 8 single faults: on average over the ' +
        'cases 90.0 % are detected, and of these 75.0 % isolated to 1 part, 87.5 % to 2 and 100 % to 3, ' +
        'in 5.0 min.',
      'With what one has as a rule, 100 % are isolated to 1 part at the bench and 50.0 % at the trailside.',
      '2 ambiguity groups with a full tool box; 4 of 1,404 checks never pay.',
    ])
    expect(presentTotals([found], 1)[0]).toMatch(/^1 case, .*, with 4 single faults: /)
    expect(presentTotals([found], 1)[2]).toMatch(/^No ambiguity group /)
  })

  it('say nothing of no case', () => {
    expect(presentTotals([], 3)).toEqual([])
  })
})

describe('the page of all cases', () => {
  const knowledge = fewCases()
  const [first, ...others] = allFits(knowledge)
  const done: Standing = {
    kind: 'found',
    found: toTheEnd(
      caseTestability(knowledge, caseFor(knowledge, first!.machine.id, first!.complaint.id)),
    ),
  }
  const rowsWith = (rest: Standing) => {
    const page = presentHealth(knowledge, (fit) =>
      fit.machine === first!.machine && fit.complaint === first!.complaint ? done : rest,
    )
    return { page, rows: page.machines.flatMap(({ rows }) => rows) }
  }

  it('says what stands in the place of figures that are still to come', () => {
    const { page, rows } = rowsWith({ kind: 'waiting' })
    expect(others.length).toBeGreaterThan(2)
    expect(rows.map(({ says }) => says)).toEqual(['', ...others.map(() => 'Being worked out')])
    expect(rows.map(({ figures }) => figures.length)).toEqual([
      page.columns.length,
      ...others.map(() => 0),
    ])
    expect(rows[0]!.figures.map(({ label }) => label)).toEqual(page.columns)
    expect(page.working?.says).toBe(
      `${others.length} of ${others.length + 1} are still being worked out.`,
    )
    expect(page.said).toBe('')
  })

  it('waits for nothing that went wrong, and says nothing of kinds where a case is missing', () => {
    const { page, rows } = rowsWith({ kind: 'failed' })
    expect(page.working).toBeNull()
    expect(page.kinds).toBeNull()
    expect(rows[1]!.says).toBe('Could not be worked out. The server’s log says why.')
  })
})
