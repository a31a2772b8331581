import { describe, expect, it } from 'vitest'
import { instantiate } from '../../server/knowledge/instantiate.ts'
import type { Machine } from '../../server/knowledge/schema/index.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const pedlar = knowledge.machines.get('pedlar-1c')!

/** The same machine with its exciter read through the wires, or through some failures of them. */
function reading(through: NonNullable<NonNullable<Machine['parts'][0]['reach']>[0]['through']>) {
  const parts = pedlar.parts.map((part) =>
    part.id === 'exciter'
      ? { ...part, reach: part.reach!.map((reach) => ({ ...reach, through })) }
      : part,
  )
  const { model } = instantiate(knowledge, knowledge.complaints.get('no-spark')!, {
    ...pedlar,
    parts,
  })
  const check = model.checks.find(({ id }) => id === 'winding-resistance.exciter.igniter-plug')!
  const at = (fault: string) =>
    check.chances[model.cutSets.findIndex(({ faults }) => faults.join() === fault)]!
  const healthy = at('igniter.dead')
  return (fault: string) => at(fault).some((chance, i) => Math.abs(chance - healthy[i]!) > 0.05)
}

describe('a part on the way of a reading', () => {
  it('shows each of its failures', () => {
    const shows = reading(['wires-exciter'])
    expect(shows('wires-exciter.open')).toBe(true)
    expect(shows('wires-exciter.corroded')).toBe(true)
  })

  it('shows only those failures that the sheet lets through', () => {
    const shows = reading([{ part: 'wires-exciter', modes: ['open'] }])
    expect(shows('wires-exciter.open')).toBe(true)
    expect(shows('wires-exciter.corroded')).toBe(false)
    expect(shows('exciter.open')).toBe(true)
  })
})
