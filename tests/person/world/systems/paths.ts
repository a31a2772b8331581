import { node } from '../../../../server/practice/world/node.ts'
import { partNamed } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import type { Pin, Stretch } from '../circuit.ts'
import { harness } from '../network.ts'
import type { Now } from '../now.ts'

/** Where the two ends of a part arrive at the box that it works with; its own pins where no wire leads on. */
export function pinsAtBox(now: Now, part: string): readonly [Pin, Pin] {
  const { ends, wires } = now.site.world.circuit
  const [plug, a, b] = ends[part]!
  const all = Object.values(wires).flat()
  return [farEnd(all, [plug, a]), farEnd(all, [plug, b])]
}

function farEnd(stretches: readonly Stretch[], pin: Pin): Pin {
  for (const [from, to] of stretches) {
    if (from.join() === pin.join()) return to
    if (to.join() === pin.join()) return from
  }
  return pin
}

/**
 * Ω that stand between a part and its box, to and fro: wires, plugs, what is wrong with them, and the part
 * itself. Infinity where anything on the way is apart or broken.
 */
export function loopOhms(now: Now, part: string): number {
  const [a, b] = pinsAtBox(now, part)
  return ohmsBetween(harness(now), node(a, 'own'), node(b, 'own'))
}

/** Ω from the ground of a box to metal. A second ground helps, and a known good box is grounded by its foot. */
export function groundOhms({ site, ...now }: Now, part: string): number {
  const { world, standing } = site
  const { role } = partNamed(world.machine, part)
  if (standing.jumper === role || standing.standIns.has(part)) return 0.1
  const box = world.circuit.boxes.find((each) => each.part === part)!
  return ohmsBetween(harness({ site, ...now }), node(box.ground, 'own'), 'ground')
}
