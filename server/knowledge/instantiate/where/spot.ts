import { entry } from '../../../diagnosis/model/named.ts'
import type { Spot } from '../../case.ts'
import type { Connector, Machine, Part, Reach } from '../../schema/machine.ts'

/** Where the probes go for one way of reaching a part, in words and for the drawing. */
export function spotOf(machine: Machine, reach: Reach): Spot {
  const { at } = reach
  const touch = touchOf(reach)
  if (at === undefined) return { says: touch.join(' and '), touch, awkward: false }
  const connector = entry(machine.connectors, at)
  return {
    says: `the ${connector.name}, ${pinsInWords(touch)}`,
    connector: { id: at, card: connector },
    touch,
    awkward: connector.awkward ?? false,
  }
}

function touchOf(reach: Reach): readonly [string, string] {
  const [a, b] = reach.pins?.map(String) ?? reach.touch ?? []
  return [a ?? '', b ?? '']
}

/** "pins 3 and 4", "pin 7 and ground" */
export function pinsInWords([a, b]: readonly [string, string]): string {
  if (b === 'ground') return `pin ${a} and ground`
  if (a === 'ground') return `ground and pin ${b}`
  return `pins ${a} and ${b}`
}

/** The colour codes of the touched pins' wires, base/tracer: "BK/RD and YE". */
export function wiresInWords(connector: Connector | undefined, touch: readonly string[]): string {
  const codes = touch.flatMap((pin) => connector?.pins[pin]?.wire.join('/') ?? [])
  return codes.join(' and ')
}

/** The ways of reaching a property of a part, in the order of the sheet. */
export function reachesFor(part: Part, property: string, output?: string): Reach[] {
  return (part.reach ?? []).filter(
    (reach) =>
      reach.for.includes(property) &&
      (output === undefined || reach.output === undefined || reach.output === output),
  )
}
