import type { Secondary, Tower } from '../../../knowledge/schema/wiring/circuit.ts'
import { warmed } from '../good.ts'
import { capIn, capOut, ground, leadIn, leadOut, node } from '../node.ts'
import type { Resistor } from '../solve.ts'
import { joint } from './joint.ts'
import { effectNow, type Moment } from './moment.ts'

/** Secondary windings, from their towers through lead and cap to the contact that grips the plug. */
export function towers(now: Moment): Resistor[] {
  const { circuit, good } = now.truth
  const inTheWay = (part: string) => effectNow(now, part).series ?? 0
  return Object.entries(circuit.secondaries ?? {}).flatMap(([part, secondary]): Resistor[] => {
    const { series = 0, turns = 1 } = effectNow(now, part, 'secondary')
    const ohms = warmed(good(part).secondary * turns, now.celsius(part)) + series
    const from = leadIn(secondary.towers[0].lead)
    return [
      [from, farEnd(secondary, ({ lead }) => leadIn(lead)), ohms],
      ...secondary.towers.flatMap(({ lead, cap }): Resistor[] => [
        [leadIn(lead), leadOut(lead), good(lead).ohms + inTheWay(lead)],
        [leadOut(lead), capIn(cap), joint + (effectNow(now, cap, 'joint').series ?? 0)],
        [capIn(cap), capOut(cap), good(cap).ohms + inTheWay(cap)],
      ]),
    ]
  })
}

/** Where a secondary ends: at its other tower, at a pin, or else on its core. */
export function farEnd(
  { towers: [, second], end }: Secondary,
  at: (tower: Tower) => string,
): string {
  if (second !== undefined) return at(second)
  return end === undefined ? ground : node(end, 'own')
}
