import { describe, expect, it } from 'vitest'
import type { BranchView } from '../../server/jobs/beside/view.ts'
import { plain } from '../support/plain.ts'
import { inRoom } from '../support/rooms.ts'
import { type Readings, smallJobPage } from '../support/small-job.ts'

function branchCalled(says: string, readings: Readings = {}): BranchView {
  const all = (branch: BranchView): BranchView[] => [branch, ...branch.below.flatMap(all)]
  const found = all(plain(inRoom(smallJobPage(readings), 'tree').tree)).find(
    (branch) => branch.says === says,
  )
  if (found === undefined) throw new Error(`no branch says “${says}”`)
  return found
}

describe('the fault tree', () => {
  it('begins at the complaint and goes down to the faults', () => {
    const { tree } = inRoom(smallJobPage(), 'tree')
    expect(tree.says).toBe('There is no spark')
    expect(tree.below.map(({ says }) => says)).toEqual([
      'No supply reaches the igniter',
      'Ignition coil',
      'Igniter',
    ])
    expect(branchCalled('Start exciter').below.map(({ says }) => says)).toEqual([
      'Is open somewhere in the winding',
      'Has shorted turns',
    ])
  })

  it('says of a gate how its branches make it, unless there is only one', () => {
    expect(branchCalled('There is no spark').gate).toBe('any of these')
    expect(branchCalled('No supply reaches the igniter').gate).toBe('')
    expect(branchCalled('Has shorted turns').gate).toBe('')
  })

  it('says in words which reading cleared a branch', () => {
    const readings = { spark: 'none', 'coil.resistance': 7654 }
    expect(branchCalled('Ignition coil', readings)).toMatchObject({
      percent: '<1 %',
      cleared: true,
      clearedBy: 'cleared: ignition coil read 7.654 kΩ, in range, >99 % (reading 2)',
      open: false,
    })
  })

  it('lets a branch live again when a later reading brings it back', () => {
    const readings = { 'coil.resistance': 7654 }
    expect(branchCalled('Ignition coil', readings).cleared).toBe(true)
    const later = {
      ...readings,
      'exciter.resistance': 365,
      'igniter.swap': 'as-before',
      spark: 'none',
    }
    expect(branchCalled('Ignition coil', later)).toMatchObject({ cleared: false, clearedBy: '' })
  })

  it('comes unfolded where the drawing beside it goes on', () => {
    const { drawing } = inRoom(smallJobPage(), 'tree')
    // One in four and one in five, before any reading.
    expect(branchCalled('Igniter')).toMatchObject({ percent: '27 %', open: true })
    expect(drawing).toContain('Gives no pulse')
    expect(branchCalled('Ignition coil')).toMatchObject({ percent: '20 %', open: false })
    expect(drawing).not.toContain('Is open</tspan>')
    expect(drawing).toContain('1 fault folded')
  })

  it('comes unfolded along the path that is likely', () => {
    expect(branchCalled('There is no spark').open).toBe(true)
    expect(branchCalled('Start exciter', { 'exciter.resistance': 'OL OL OL' }).open).toBe(true)
    expect(branchCalled('Start exciter', { 'exciter.resistance': 365 }).open).toBe(false)
  })
})
