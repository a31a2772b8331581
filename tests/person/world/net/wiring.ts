import { ground, node } from '../../../../server/practice/world/node.ts'
import type { Resistor } from '../../../../server/practice/world/solve.ts'
import type { Pin } from '../circuit.ts'
import type { Now } from '../now.ts'

/** A joined pair of pins. Common practice: a few mΩ. */
const joint = 0.005

export function joints(now: Now): Resistor[] {
  const { world, standing } = now.site
  const extra = new Map(
    Object.entries(world.circuit.joints).flatMap(([part, pins]) =>
      pins.map((pin) => [pin.join(), now.effect(part).series ?? 0] as const),
    ),
  )
  return [
    ...Object.entries(world.machine.connectors)
      .filter(([plug]) => !standing.apart.has(plug))
      .flatMap(([plug, { pins }]) =>
        Object.keys(pins).map((name): Resistor => {
          const pin = [plug, Number(name)] as const
          return [node(pin, 'own'), node(pin, 'harness'), joint + (extra.get(pin.join()) ?? 0)]
        }),
      ),
    ...Object.entries(world.circuit.joints).flatMap(([part, pins]) => acrossPins(now, part, pins)),
  ]
}

/** Salt water from pin to pin, and to the metal. */
function acrossPins(now: Now, part: string, pins: readonly Pin[]): Resistor[] {
  const { across = Infinity, leak = Infinity } = now.effect(part)
  return pins.flatMap((pin, i): Resistor[] => {
    const neighbour = i % 2 === 0 ? pins[i + 1] : undefined
    return [
      [node(pin, 'own'), ground, leak],
      ...(neighbour ? [[node(pin, 'own'), node(neighbour, 'own'), across] as const] : []),
    ]
  })
}

export function wires(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.wires).flatMap(([part, stretches]) => {
    const { leak = Infinity, ...effect } = now.effect(part)
    const inLine = now.site.world.circuit.inLine?.[part]
    const series = (effect.series ?? 0) + (inLine ? (now.effect(inLine).series ?? 0) : 0)
    return stretches.flatMap(([from, to], i): Resistor[] => [
      // What is wrong is wrong with one wire of several: with the first, or with what all branches share.
      [
        node(from, 'harness'),
        node(to, 'harness'),
        now.good(part).ohms + (bad(stretches, i) ? series : 0),
      ],
      ...(i === 0 ? [[node(from, 'harness'), ground, leak] as const] : []),
    ])
  })
}

const bad = (stretches: readonly (readonly [Pin, Pin])[], i: number) =>
  i === 0 || stretches[0]![0].join() === stretches[i]![0].join()

export function grounds(now: Now): Resistor[] {
  const { circuit } = now.site.world
  return Object.entries(circuit.grounds).flatMap(([part, pins]) => {
    const eye = `${part} eye`
    const { series = 0 } = now.effect(part)
    return [
      ...pins.map((pin): Resistor => [node(pin, 'harness'), eye, 0.01]),
      [eye, ground, now.good(part).ohms + series] as const,
    ]
  })
}
