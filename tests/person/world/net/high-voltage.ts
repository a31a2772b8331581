import {
  capIn,
  capOut,
  ground,
  leadIn,
  leadOut,
  node,
  tower,
} from '../../../../server/practice/world/node.ts'
import { partNamed, partsIn, servedBy } from '../../../../server/practice/world/sheet.ts'
import type { Resistor } from '../../../../server/practice/world/solve.ts'
import type { Now } from '../now.ts'
import { has, seated } from '../site.ts'
import { celsiusOf, copper } from '../temperature.ts'

/** Secondary, lead and cap, one after the other. The gap of the plug lets no meter through. */
export function highVoltage(now: Now): Resistor[] {
  const { world, standing } = now.site
  return world.machine.outputs.flatMap(({ id: output }): Resistor[] => {
    const cap = seated(now.site, 'cap', output)
    const lead = seated(now.site, 'lead', output)
    return [
      secondary(now, output),
      [tower(output), leadIn(output), standing.leadOff.has(output) ? Infinity : 0.001],
      [leadIn(output), leadOut(output), now.good(lead).ohms + (now.effect(lead).series ?? 0)],
      [leadOut(output), capIn(output), standing.capOff.has(output) ? Infinity : screwed(now, cap)],
      [capIn(output), capOut(output), now.good(cap).ohms + burnt(now, cap)],
    ]
  })
}

/** From the tower to the coil's own pin, or to the core of a module, which is metal. */
function secondary(now: Now, output: string): Resistor {
  const { world } = now.site
  const isModule = has(now.site, 'module')
  const part = seated(now.site, isModule ? 'module' : 'coil', output)
  const { series = 0, turns = 1 } = now.effect(part)
  const ohms = copper(now.good(part).secondary * turns, celsiusOf(now.site, part)) + series
  if (isModule) return [ground, tower(output), ohms]
  const [first, second] = servedBy(partNamed(world.machine, part))
  // Two towers are the two ends of one winding; it is drawn from each, and so with twice its ohms.
  if (first !== undefined && second !== undefined) return [tower(first), tower(second), 2 * ohms]
  const [plug, , b] = world.circuit.ends[partsIn(world.machine, 'coil', output)[0]!.id]!
  return [node([plug, b], 'own'), tower(output), ohms]
}

/** A cap that is not screwed home makes no contact with its lead, and is good by itself. */
const screwed = (now: Now, cap: string) => (now.has(cap, 'loose') ? Infinity : 0.001)
const burnt = (now: Now, cap: string) => (now.has(cap, 'loose') ? 0 : (now.effect(cap).series ?? 0))
