import { seedOf, spread } from '../../../../server/practice/world/chance.ts'
import { ground, node } from '../../../../server/practice/world/node.ts'
import { partNamed, partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Resistor } from '../../../../server/practice/world/solve.ts'
import { seeded } from '../../../bench/random.ts'
import type { Box } from '../circuit.ts'
import type { Now } from '../now.ts'
import { lampSeries } from './parts.ts'

/**
 * Rectifiers, a thyristor and a few resistors: at the volts of an ohmmeter some tens to hundreds of kΩ. From
 * memory; the same in each box for good.
 */
export function insides({ site }: Now, box: Box): Resistor[] {
  const inside = (name: string) =>
    spread(seeded(seedOf(site.world.seed, box.part, name)), 150e3, 0.8)
  const middle = `${box.part} ground`
  return [
    [node(box.ground, 'own'), middle, 0.001],
    ...box.inputs.flatMap(([a, b], i): Resistor[] => [
      [node(a, 'own'), node(b, 'own'), inside(`input ${i}`)],
      [node(b, 'own'), middle, inside(`return ${i}`)],
    ]),
    ...box.outputs.flatMap(([a, b], i): Resistor[] => [
      [node(a, 'own'), node(b, 'own'), inside(`output ${i}`)],
      [node(b, 'own'), middle, 0.05],
    ]),
    ...(box.stop ? [[node(box.stop, 'own'), middle, inside('stop') / 5] as const] : []),
    ...(site.standing.jumper === partNamed(site.world.machine, box.part).role
      ? [[middle, ground, 0.1] as const]
      : []),
  ]
}

/** The regulator stands between winding and lamps; its case is the other end of both. */
export function lights(now: Now): Resistor[] {
  const { machine } = now.site.world
  const [regulator] = partsIn(machine, 'regulator')
  if (regulator === undefined) return []
  const pin = (n: number) => node(['regulator-plug', n], 'own')
  const { across = 40e3 } = now.effect(regulator.id)
  return [
    [pin(1), pin(3), 0.02],
    [pin(2), ground, 0.02],
    [pin(3), pin(4), across],
    ...otherLamps(now),
  ]
}

/** Lamps without a plug on the sheet hang side by side on the wire that feeds them all. */
function otherLamps(now: Now): Resistor[] {
  const { world, standing } = now.site
  if (standing.lampsOut) return []
  return partsIn(world.machine, 'lamp')
    .filter(({ id }) => world.circuit.ends[id] === undefined)
    .map(({ id }) => [
      node(['lamp-switch-plug', 2], 'harness'),
      'lamp-ground eye',
      now.good(id).ohms + lampSeries(now, id),
    ])
}
