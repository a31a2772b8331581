import { seeded, seedOf, spread } from '../chance.ts'
import type { TrueMachine } from '../machine.ts'
import { node } from '../node.ts'
import type { Resistor } from '../solve.ts'

/** What lies between an input and the rest of a box, Ω, at the few volts of an ohmmeter. From memory. */
const inside = 150e3

/**
 * Rectifiers, a thyristor and a few resistors: at the volts of an ohmmeter some tens to hundreds of kΩ; the
 * same in each box for good. Its metal reaches the engine only by its ground pin.
 */
export function boxes({ circuit, seed }: TrueMachine): Resistor[] {
  return (circuit.boxes ?? []).flatMap(({ part, inputs, outputs, ground, stop }) => {
    const of = (name: string) => spread(seeded(seedOf(seed, part, name)), inside, 0.8)
    const middle = `${part} ground`
    return [
      [node(ground, 'own'), middle, 0.001] as const,
      ...inputs.flatMap(([plug, a, b], i): Resistor[] => [
        [node([plug, a], 'own'), node([plug, b], 'own'), of(`input ${i}`)],
        [node([plug, b], 'own'), middle, of(`return ${i}`)],
      ]),
      ...outputs.flatMap(([plug, a, b], i): Resistor[] => [
        [node([plug, a], 'own'), node([plug, b], 'own'), of(`output ${i}`)],
        [node([plug, b], 'own'), middle, 0.05],
      ]),
      ...(stop ? [[node(stop, 'own'), middle, of('stop') / 5] as const] : []),
    ]
  })
}
