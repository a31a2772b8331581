import { partsIn } from '../../../server/practice/world/sheet.ts'
import type { Pin } from '../world/circuit.ts'
import type { Site } from '../world/site.ts'
import { add, type Change, doing, remove } from '../world/standing.ts'
import { outputsOf } from '../world/world.ts'

/** What "the plug", "the coil" or "both ends" mean in the words of one check. */
export interface Where {
  readonly site: Site
  readonly part: string
  readonly output: string
  /** Connector that the page shows. */
  readonly plug: string | undefined
}

/** The outputs meant: the one of the check, or all. */
export const outputsMeant = ({ site, output }: Where): readonly string[] =>
  output === '' ? outputsOf(site.world) : [output]

/** All outputs, whatever the check is about. */
export const all = ({ site }: Where): readonly string[] => outputsOf(site.world)

export const join = (...plugs: readonly string[]): Change => remove('apart', ...plugs)

/** Pulls connectors apart; what covers them has to come off first, be it said or not. */
export function pull({ site }: Where, plugs: readonly string[]): Change {
  const known = plugs.filter((plug) => site.world.machine.connectors[plug] !== undefined)
  const covers = known.flatMap((plug) => site.world.machine.connectors[plug]!.access ?? [])
  return doing([add('off', ...covers), add('apart', ...known)])
}

/** The plugs of the coil of each output meant. */
export const coilPlugs = (where: Where, outputs = outputsMeant(where)): readonly string[] =>
  outputs.map((output) => plugOf(where, partsIn(where.site.world.machine, 'coil', output)[0]!.id))

/** The plug in which a part ends. */
export function plugOf({ site }: Where, part: string): string {
  const { ends, legs, grounded } = site.world.circuit
  return (ends[part] ?? legs[part] ?? grounded?.[part])![0]
}

export const plugOfRole = (where: Where, role: string): string =>
  plugOf(where, partsIn(where.site.world.machine, role)[0]!.id)

/**
 * The two plugs between which the wires of a part are read: where they branch, the first branch; where they lead on
 * through a switch, beyond it.
 */
export function bothEnds(where: Where): readonly string[] {
  const stretches = where.site.world.circuit.wires[where.part] ?? []
  const [first, last] = [stretches[0], stretches.at(-1)]
  if (first === undefined || last === undefined) return []
  const branches = stretches.every(([from]) => from.join() === first[0].join())
  return [first[0][0], (branches ? first : last)[1][0]]
}

/** Every plug that the wires of a part lead to. */
export function allEnds({ site, part }: Where): readonly string[] {
  return [...new Set((site.world.circuit.wires[part] ?? []).flat().map(([plug]: Pin) => plug))]
}

/** The plugs of a box. */
export function boxPlugs({ site }: Where, role: string): readonly string[] {
  const [part] = partsIn(site.world.machine, role)
  const box = site.world.circuit.boxes.find((each) => each.part === part?.id)
  const pins = [...(box?.inputs ?? []), ...(box?.outputs ?? [])].flat()
  return [...new Set(pins.map(([plug]) => plug))]
}

export const injectorPlugs = (where: Where): readonly string[] =>
  outputsMeant(where).map((output) =>
    plugOf(where, partsIn(where.site.world.machine, 'injector', output)[0]!.id),
  )

export const lampSwitchPlugs = (where: Where): readonly string[] =>
  partsIn(where.site.world.machine, 'lamp-switch').map(({ id }) => plugOf(where, id))

export function lampPlug({ site }: Where): string {
  const { circuit, machine } = site.world
  const lamp = partsIn(machine, 'lamp').find(({ id }) => circuit.ends[id] !== undefined)!
  return circuit.ends[lamp.id]![0]
}
