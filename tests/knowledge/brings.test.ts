import { describe, expect, it } from 'vitest'
import { instantiate } from '../../server/knowledge/instantiate.ts'
import type { Complaint } from '../../server/knowledge/schema/index.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const complaint = knowledge.complaints.get('hard-start-cold')!

type Brings = number | { readonly half: number; readonly less: number }

/** How many times as likely as old fuel a fouled plug is at the start, where it brings the complaint so often. */
function plugToFuel(machine: string, brings: Brings | undefined): number {
  const plug = (of: Brings | undefined) => ({
    any: 'plug',
    modes: ['worn', 'fouled', 'cracked'],
    ...(of !== undefined && { brings: of }),
  })
  const says = 'a plug'
  const changed: Complaint = {
    ...complaint,
    gates: { ...complaint.gates, 'plug-poor': { says, per: 'output', or: [plug(brings)] } },
    watched: { ...complaint.watched, seen: { says, or: [plug(undefined)] } },
  }
  const { model } = instantiate(knowledge, changed, knowledge.machines.get(machine)!)
  const prior = (fault: RegExp) =>
    model.cutSets.find(({ faults }) => faults.length === 1 && fault.test(faults[0]!))!.prior
  return prior(/^plug.*\.fouled$/) / prior(/^fuel\.stale$/)
}

describe('how often a failure brings a complaint', () => {
  it('weighs it beside the others, whatever else watches it', () => {
    const always = plugToFuel('pedlar-1c', undefined)
    expect(plugToFuel('pedlar-1c', 0.25)).toBeCloseTo(0.25 * always, 9)
  })

  it.each([
    ['pedlar-1c', 0.5],
    ['larkfell-2i', 0.5],
    ['ferrymere-3t', 0.1],
    ['freshet-4d', 0.1],
  ])(
    'is one thing where it takes half of the outputs, and another where it takes less: %s',
    (machine, factor) => {
      const always = plugToFuel(machine, undefined)
      expect(plugToFuel(machine, { half: 0.5, less: 0.1 })).toBeCloseTo(factor * always, 9)
    },
  )
})
