import { ground, node } from '../../../../server/practice/world/node.ts'
import { partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Resistor } from '../../../../server/practice/world/solve.ts'
import type { Now } from '../now.ts'
import { has } from '../site.ts'
import { celsiusOf, copper } from '../temperature.ts'

/** Where primary winding, points, condenser and the wire out meet. */
export const terminal = 'terminal of the points'
/** What is screwed to it, by its own end. */
export const endAt = (part: string) => `${part} end`

/** Ω of good points, closed. From memory. */
const closedOhms = 0.05

/** Windings with one end on their core. */
export function groundedWindings(now: Now): Resistor[] {
  const { circuit, machine } = now.site.world
  const windings = machine.parts.filter(({ kind }) => kind === 'grounded-winding')
  return windings.flatMap(({ id, role }) => {
    const from = role === 'primary' ? endAt(id) : node(circuit.grounded![id]!, 'own')
    return groundedWinding(now, id, from)
  })
}

/** The path to the core leaves it somewhere on its way: what lies beyond is bridged. */
function groundedWinding(now: Now, part: string, from: string): Resistor[] {
  const { series = 0, turns = 1, leak = Infinity, at = 0.5 } = now.effect(part)
  const ohms = copper(now.good(part).ohms * turns, celsiusOf(now.site, part))
  const tap = `${part} tap`
  return [
    [from, tap, ohms * at],
    [tap, ground, ohms * (1 - at) + series],
    [tap, ground, leak],
  ]
}

/** Points, condenser and the wire out; with all lifted off the terminal, each by itself. */
export function pointsAndCondenser(now: Now): Resistor[] {
  const { site } = now
  if (!has(site, 'points')) return []
  const of = (role: string) => partsIn(site.world.machine, role)[0]!.id
  const [primary, condenser, lead] = [of('primary'), of('condenser'), of('points-lead')] as const
  const screwed = site.doing.lifted ? Infinity : 0.001
  const { series = 0, leak = Infinity } = now.effect(lead)
  return [
    ...[primary, condenser, lead].map((part): Resistor => [endAt(part), terminal, screwed]),
    [terminal, ground, pointsOhms(now, of('points'))],
    [endAt(condenser), ground, leakAtMeter(now, condenser)],
    [endAt(lead), ground, leak],
    [endAt(lead), node(site.world.circuit.grounded![lead]!, 'own'), 0.03 + series],
    // The stop wire branches off beside the coil.
    [node(['coil-plug', 1], 'harness'), node(['stop-plug', 1], 'own'), 0.01],
  ]
}

function pointsOhms(now: Now, points: string): number {
  const { series = 0, leak = Infinity } = now.effect(points)
  const opens = now.site.doing.pointsOpen === true && !now.has(points, 'closed-up')
  const through = opens ? Infinity : closedOhms + series
  return 1 / (1 / through + 1 / leak)
}

/** A leak that only the high volts of the points find is none for a meter. */
function leakAtMeter(now: Now, condenser: string): number {
  const { leak = Infinity, breaksDownAt = 0 } = now.effect(condenser)
  return breaksDownAt > 10 ? Infinity : leak
}
