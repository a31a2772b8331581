import { describe, expect, it } from 'vitest'
import { shippedCases, shippedKnowledge } from '../../support/knowledge.ts'
import { circuitOf } from './circuit.ts'
import { complains } from './complaints.ts'
import { asItCame, climates, drawWorld } from './draw.ts'
import { effects } from './effects/index.ts'

const knowledge = shippedKnowledge()
const cases = shippedCases()
/** Kinds that hang on no pin, or whose wires nobody reads ohms through: what they are stands in their role. */
const knownByKind = new Set([
  ...['flywheel', 'flywheel-key', 'module-seat', 'plug-lead', 'plug-cap', 'spark-plug', 'cylinder'],
  ...['flooding', 'tank-fuel', 'stale-fuel', 'fuel-feed', 'carburettor', 'ignition-module'],
  ...['igniter-output', 'unit-output', 'regulator', 'rectifier-regulator', 'fuse', 'lamp', 'dash'],
  ...['battery', 'battery-lead', 'starter'],
])

const names = cases.map((kase) => [`${kase.complaint.id} on ${kase.machine.id}`, kase] as const)

describe('the world of the literal person', () => {
  it('has every failure mode of every part kind, and no other', () => {
    const shipped = [...knowledge.partKinds.values()].flatMap(({ kind, modes }) =>
      modes.map(({ id }) => `${kind}.${id}`),
    )
    const known = Object.entries(effects).flatMap(([kind, modes]) =>
      Object.keys(modes).map((id) => `${kind}.${id}`),
    )
    expect(shipped.length).toBeGreaterThan(50)
    // A mode that is missing here is added to tests/person/world/effects/.
    expect(known.sort()).toEqual(shipped.sort())
  })

  it.each([...knowledge.machines.values()].map((machine) => [machine.id, machine] as const))(
    'has every part of %s on its wires, or knows it by its role',
    (_, { id, parts, connectors }) => {
      const circuit = circuitOf(id)
      const { ends, grounded, legs, wires, grounds, joints, keys = {} } = circuit
      const hung = [ends, grounded, legs, wires, grounds, joints, keys]
      const known = new Set([
        ...hung.flatMap((each) => Object.keys(each)),
        ...circuit.boxes.map(({ part }) => part),
      ])
      // A part that is missing here is added to the machine's file in trees/circuits/.
      const missing = parts.filter(
        ({ id, kind, role }) =>
          !known.has(id) && !knownByKind.has(kind) && role !== 'battery-ground',
      )
      expect(missing.map((part) => part.id)).toEqual([])
      const plugs = Object.values(circuit.wires).flat(2)
      const strange = plugs.filter(
        ([plug, pin]) => !plug.endsWith('fuse-holder') && connectors[plug]?.pins[pin] === undefined,
      )
      expect(strange).toEqual([])
    },
  )

  it.each(names)('makes the complaint %s only with its fault there', (_, kase) => {
    for (const [seed, climate] of climates.entries()) {
      const world = drawWorld(knowledge, kase, seed, climate)
      const provoked = { certain: true }
      expect(complains({ ...asItCame(world), doing: provoked })).toBe(true)
      const good = { ...world, faults: [], elsewhere: false }
      expect(complains({ ...asItCame(good), doing: provoked })).toBe(false)
    }
  })
})
