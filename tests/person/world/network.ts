import type { Resistor } from '../../../server/practice/world/solve.ts'
import { insides, lights } from './net/boxes.ts'
import { highVoltage } from './net/high-voltage.ts'
import { keySwitches, legs, parts } from './net/parts.ts'
import { groundedWindings, pointsAndCondenser } from './net/points.ts'
import { grounds, joints, wires } from './net/wiring.ts'
import type { Now } from './now.ts'

/** Everything that conducts on the machine as it stands, as an ohmmeter of a few volts meets it. */
export function network(now: Now): readonly Resistor[] {
  return [
    ...harness(now),
    ...now.site.world.circuit.boxes.flatMap((box) => insides(now, box)),
    ...lights(now),
    ...highVoltage(now),
  ]
}

/** The same without what is inside the boxes: wires, plugs, and what hangs on them. */
export function harness(now: Now): readonly Resistor[] {
  const conducts = kept.get(now) ?? harnessOf(now)
  kept.set(now, conducts)
  return conducts
}

/** Whoever looks at one moment of a machine asks for it many times. */
const kept = new WeakMap<Now, readonly Resistor[]>()

function harnessOf(now: Now): readonly Resistor[] {
  return [
    ...joints(now),
    ...parts(now),
    ...keySwitches(now),
    ...legs(now),
    ...groundedWindings(now),
    ...pointsAndCondenser(now),
    ...wires(now),
    ...grounds(now),
  ]
}
