import { describe, expect, it } from 'vitest'
import { checkNamed } from '../../server/diagnosis/belief/belief.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { bandOf } from '../../server/measure/decide/bands.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { byWiring } from '../../server/practice/seen/by-wiring.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import { pulls } from '../../server/practice/seen/making.ts'
import { asComplainedOf } from '../../server/practice/seen/severity.ts'
import { trueMachine } from '../../server/practice/world/machine.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()

const caseOf = (complaint: string, machine: string): Case =>
  shippedCases().find((each) => each.complaint.id === complaint && each.machine.id === machine)!

/** Where a check falls by the wiring of a machine that has this fault as whoever complains has it. */
function bandSeen(kase: Case, fault: string, id: string, seed: number): string {
  const card = kase.checks.get(id)!
  const cutSet = kase.model.cutSets.findIndex(({ faults }) => faults.join() === fault)
  const drawn = { ...drawHidden(knowledge, kase, 1), seed, cutSet, faults: [fault], air: 20 }
  const truth = asComplainedOf({ ...drawn, truth: trueMachine(knowledge, kase, [fault], seed) })
  const stands = new Set(card.setups.map((setup) => setup.id))
  const making = { take: 1, pull: 'brisk', stands } as const
  const text = byWiring({ ...drawn, truth }, card, making, () => 0.5)
  const { limits, quantity, rpm = pulls.brisk } = card.measurand!
  const parsed = parseTouches(text!, quantity)
  const [touch] = parsed.ok ? parsed.touches : []
  if (touch?.kind !== 'value') return quantity.overRange!
  const isPulled = card.engine === 'cranking' && quantity.corrections.includes('speed')
  return bandOf(isPulled ? (touch.value * rpm) / pulls.brisk : touch.value, limits, quantity)
}

/** By complaint and machine: a fault, and a check that it shows in. */
const shown = [
  ['does-not-turn', 'brackenway-1b', 'wires-start.grounded', 'key-volts.wires-key.key-plug'],
  ['dead-lights', 'pedlar-1c', 'wires-lamps.grounded', 'regulated-volts.regulator.regulator-plug'],
  [
    'dead-lights',
    'larkfell-2i',
    'wires-lamps.grounded',
    'regulated-volts.regulator.regulator-plug',
  ],
  ['dead-lights', 'larkfell-2i', 'lamp-ground.corroded', 'ground-drop.lamp-ground'],
  ['not-charging', 'haulmoor-1e', 'battery-ground.corroded', 'battery-ground-drop.battery-ground'],
  ['hard-start-cold', 'brackenway-1b', 'battery.tired', 'pulse-strength.single'],
  ['hard-start-cold', 'brackenway-1b', 'battery-lead.corroded', 'pulse-strength.single'],
  [
    'no-spark',
    'haulmoor-1e',
    'igniter-ground.corroded',
    'ground-resistance.igniter-ground.igniter-plug',
  ],
  ['dead-lights', 'fernslade-1p', 'wires-lighting.open', 'winding-to-ground.lighting.lamp-plug'],
  [
    'lamps-too-bright',
    'pedlar-1c',
    'regulator-ground.loose',
    'regulated-volts.regulator.regulator-plug',
  ],
  [
    'lamps-too-bright',
    'larkfell-2i',
    'regulator-ground.loose',
    'regulated-volts.regulator.regulator-plug',
  ],
] as const

describe('what the rows say, the circuit says as well', () => {
  it.each(shown)('of %s on %s with %s by %s', (complaint, machine, fault, id) => {
    const kase = caseOf(complaint, machine)
    const { outcomes, chances } = checkNamed(kase.model, id)
    const row = chances[kase.model.cutSets.findIndex(({ faults }) => faults.join() === fault)]!
    for (const seed of [1, 2, 3]) {
      const band = bandSeen(kase, fault, id, seed)
      expect(row[outcomes.indexOf(band)], `${band} with ${seed}`).toBeGreaterThan(0.1)
    }
  })

  it('of a machine that hardly starts: most often there is a pulse, and it is weak', () => {
    const kase = caseOf('hard-start-cold', 'haulmoor-1e')
    const seeds = Array.from({ length: 12 }, (_, seed) => seed)
    for (const fault of ['exciter.bad-joint', 'pickup.weak']) {
      const bands = seeds.map((seed) => bandSeen(kase, fault, 'pulse-strength.single', seed))
      expect(bands.filter((band) => band === 'low').length, fault).toBeGreaterThan(6)
    }
  })
})
