import { describe, expect, it } from 'vitest'
import { toTheEnd } from '../../server/diagnosis/testability/steps.ts'
import { testability } from '../../server/diagnosis/testability/testability.ts'
import {
  caseTestability,
  kindsThatNeverPay,
  outOfReach,
} from '../../server/knowledge/case-testability.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { reportComplaint, reportTestability } from '../../server/knowledge/reports/testability.ts'
import { fewComplaints } from '../support/few-cases.ts'
import { smallCase, smallKnowledge } from '../support/small-case.ts'

const knowledge = fewComplaints('lamps-dim')
const cases = allFits(knowledge).map(({ machine, complaint }) =>
  caseFor(knowledge, machine.id, complaint.id),
)
const worked = cases.map((kase) => ({ kase, ...toTheEnd(caseTestability(knowledge, kase)) }))

describe('checks that are out of reach at a place', () => {
  it('need a tool that one does not have there as a rule', () => {
    expect(outOfReach(smallCase.checks, 'bench', smallKnowledge.tools)).toEqual(new Set())
    expect(outOfReach(smallCase.checks, 'trailside', smallKnowledge.tools)).toEqual(
      new Set(['igniter.swap']),
    )
  })

  it('or are not made there at all', () => {
    const spark = { ...smallCase.checks.get('spark')!, where: ['trailside'] as const }
    const checks = new Map([...smallCase.checks, ['spark', spark] as const])
    expect(outOfReach(checks, 'bench', smallKnowledge.tools)).toEqual(new Set(['spark']))
  })
})

describe('the testability of a case', () => {
  it('is worked out for a full tool box and for each place', () => {
    const { full, at, checks } = toTheEnd(caseTestability(smallKnowledge, smallCase))
    expect(checks).toBe(4)
    expect(full).toEqual(testability(smallCase.model))
    expect(at.bench).toEqual(full)
    expect(at.trailside).toEqual(testability(smallCase.model, new Set(['igniter.swap'])))
    expect(at.trailside).not.toEqual(full)
  })

  it('lets a check pay that is proposed only where better tools are missing', () => {
    const saved = worked.flatMap(({ full, neverPay }) =>
      full.neverAsked.filter((id) => !neverPay.includes(id)),
    )
    expect(saved).not.toEqual([])
    for (const { full, at, neverPay } of worked) {
      const boxes = [full, at.bench, at.trailside].map(({ neverAsked }) => neverAsked)
      const inAll = boxes[0]!.filter((id) => boxes.every((never) => never.includes(id)))
      expect(neverPay).toEqual(inAll)
    }
    expect(worked.flatMap(({ neverPay }) => neverPay)).not.toEqual([])
  })
})

describe('kinds of check that never pay', () => {
  it('have not one check that pays in any case', () => {
    const kinds = { checkKinds: new Map([...smallKnowledge.checkKinds, ...named('a', 'b', 'c')]) }
    const of = (...checks: string[]) =>
      new Map(checks.map((id) => [id, { ...smallCase.checks.get('spark')!, id }]))
    const found = [
      { checks: of('a.left', 'a.right', 'b.left'), neverPay: ['a.left', 'b.left'] },
      { checks: of('b.left', 'b.right.2'), neverPay: ['b.left', 'b.right.2'] },
    ]
    expect(kindsThatNeverPay({ ...smallKnowledge, ...kinds }, found)).toEqual(['b', 'c'])
  })

  it('are the last line of the report, and the checks a number in the line of their case', () => {
    const lines: string[] = []
    reportTestability(knowledge, (line) => lines.push(line))
    const [last, ...others] = lines.toReversed()
    for (const { kase, neverPay } of worked) {
      const line = others.find((each) =>
        each.startsWith(`${kase.complaint.id} on ${kase.machine.id}: `),
      )
      expect(line).toMatch(
        new RegExp(`; ${neverPay.length} of ${kase.checks.size} checks never pay$`),
      )
    }
    const listed = last!.replace(/^check kinds that never pay .*: /, '').split(', ')
    expect(listed).toEqual(
      kindsThatNeverPay(
        knowledge,
        worked.map(({ kase, neverPay }) => ({ checks: kase.checks, neverPay })),
      ),
    )
    expect(listed.length).toBeGreaterThan(5)
    expect(listed.length).toBeLessThan(knowledge.checkKinds.size)
  })
})

it('one complaint is reported alone by the same lines', () => {
  const lines: string[] = []
  reportTestability(knowledge, (line) => lines.push(line))
  const alone: string[] = []
  const complaint = knowledge.complaints.get('lamps-too-bright')!
  expect(reportComplaint(knowledge, complaint, (line) => alone.push(line))).toEqual([])
  expect(alone.length).toBeGreaterThan(0)
  expect(lines).toEqual(expect.arrayContaining(alone))
  expect(alone.filter((line) => line.startsWith('check kinds'))).toEqual([])
})

describe('faults that end neither named nor in a stated group', () => {
  it('are none in what ships', () => {
    expect(reportTestability(knowledge, () => {})).toEqual([])
  })

  it('are named with machine and complaint, and in the report below their case', () => {
    const bright = knowledge.complaints.get('lamps-too-bright')!
    const elsewhere = { ...bright.elsewhere, share: 0.9999 }
    const complaints = new Map([['lamps-too-bright', { ...bright, elsewhere }]])
    const lines: string[] = []
    const lost = reportTestability({ ...knowledge, complaints }, (line) => lines.push(line))
    expect(lost).toContain('regulator.open, lamps-too-bright on pedlar-1c')
    expect(lines).toContain('  ends neither named nor in a group: regulator.open')
  })
})

function named(...ids: string[]) {
  const kind = fewComplaints().checkKinds.values().next().value!
  return ids.map((id) => [id, { ...kind, id }] as const)
}
