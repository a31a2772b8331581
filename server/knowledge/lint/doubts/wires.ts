import { entry } from '../../../diagnosis/model/named.ts'
import type { Machine, Part } from '../../schema/machine.ts'

/** One pin of one connector. */
export interface End {
  readonly plug: string
  readonly pin: string
}

/**
 * The wires of a part that joins connectors, each by its two ends, as far as the sheet tells: it is touched
 * at "pin 1 of the igniter plug (then pin 2)" and "pin 1 of the magneto plug (then pin 2)". What is read
 * through another part as well may change its colour there, and is left out.
 */
export function wiresOf(part: Part, machine: Machine): (readonly [End, End])[] {
  if (!joins(part)) return []
  return (part.reach ?? []).flatMap(({ touch, through }) => {
    if (touch === undefined || through !== undefined) return []
    const [here = [], there = []] = touch.map((words) => endsIn(words, part, machine))
    if (here.length !== there.length) return []
    return here.flatMap((end, i) => {
      const other = there[i]
      return other === undefined || other.plug === end.plug ? [] : [[end, other] as const]
    })
  })
}

/** The pins of a connector that a part which joins it hangs on; none where the sheet does not tell. */
export function pinsAt(plug: string, part: Part, machine: Machine): Set<string> {
  const touched = wiresOf(part, machine).flat()
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
