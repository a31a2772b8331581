import { entry } from '../../../diagnosis/model/named.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Machine, Part, Reach } from '../../schema/machine.ts'

/** One pin of one connector. */
export interface End {
  readonly plug: string
  readonly pin: string
}

export type Wire = readonly [End, End]

/**
 * The wires of a part that joins connectors, each by its two ends, as far as the sheet tells: by the words of
 * where it is touched, or else by what is read through it at one end and without it at the other.
 */
export function wiresOf(part: Part, machine: Machine): readonly Wire[] {
  if (!joins(part)) return []
  const touched = wiresTouched(part, machine)
  return touched.length > 0 ? touched : wiresReadThrough(part, machine)
}

/**
 * It is touched at "pin 1 of the igniter plug (then pin 2)" and "pin 1 of the magneto plug (then pin 2)". What
 * is read through another part as well may change its colour there, and is left out.
 */
function wiresTouched(part: Part, machine: Machine): Wire[] {
  return (part.reach ?? []).flatMap(({ touch, through }) => {
    if (touch === undefined || through !== undefined) return []
    const [here = [], there = []] = touch.map((words) => endsIn(words, part, machine))
    return here.length === there.length ? pairs(here, there) : []
  })
}

function wiresReadThrough(wires: Part, machine: Machine): Wire[] {
  const found = machine.parts.flatMap(({ reach = [] }) => {
    const ends = reach.filter(({ at }) => at !== undefined && joins(wires, at))
    const [far, near] = [true, false].map((isFar) =>
      ends.filter((end) => throughOf(end).includes(wires.id) === isFar),
    )
    return (far ?? []).flatMap((one) =>
      (near ?? [])
        .filter((other) => other.for.some((property) => one.for.includes(property)))
        .flatMap((other) => pairs(endsOf(one), endsOf(other))),
    )
  })
  return [...new Map(found.map((wire) => [JSON.stringify(wire), wire])).values()]
}

function pairs(here: readonly End[], there: readonly End[]): Wire[] {
  return here.flatMap((end, i) => {
    const other = there[i]
    const isWire = other !== undefined && other.plug !== end.plug
    return isWire && ![end, other].some(({ pin }) => pin === 'ground')
      ? [[end, other] as const]
      : []
  })
}

const endsOf = ({ at: plug = '', pins = [] }: Reach): End[] =>
  pins.map((pin) => ({ plug, pin: String(pin) }))

/** The pins of a connector that a part which joins it hangs on; none where the sheet does not tell. */
export function pinsAt(plug: string, part: Part, machine: Machine): Set<string> {
  const touched = wiresTouched(part, machine).flat()
  const read = (part.reach ?? [])
    .filter(({ at }) => at === plug)
    .flatMap(({ pins = [] }) => pins.filter((pin) => pin !== 'ground').map(String))
  return new Set([...touched.filter((end) => end.plug === plug).map(({ pin }) => pin), ...read])
}

/** Whether the part runs from connector to connector. */
export function joins({ plugs = [] }: Part, ...between: readonly string[]): boolean {
  return plugs.length > 1 && between.every((plug) => plugs.includes(plug))
}

function endsIn(words: string, { plugs = [] }: Part, { connectors }: Machine): End[] {
  return plugs.flatMap((plug) => {
    const [before = '', after] = words.split(` of the ${entry(connectors, plug).name}`)
    const [, first] = /\bpin (\d+)$/.exec(before) ?? []
    // The name may go on: of "stop plug" and "stop plug cover" one only is meant.
    if (first === undefined || after === undefined || /^ ?[\w-]/.test(after)) return []
    const [, then = ''] = /^ \(then ([^)]*)\)/.exec(after) ?? []
    return [first, ...(then.match(/\d+/g) ?? [])].map((pin) => ({ plug, pin }))
  })
}
