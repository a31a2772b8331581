import { entry } from '../../../diagnosis/model/named.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Report } from '../report.ts'
import { type End, wiresOf } from './wires.ts'

/** A wire has one colour from end to end. */
export function coloursRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    for (const part of machine.parts) {
      for (const [end, other] of wiresOf(part, machine)) {
        const [here, there] = [colourAt(end, machine), colourAt(other, machine)]
        if (here === undefined || there === undefined || here === there) continue
        const says =
          `a wire of the ${part.name} is ${here} here, at pin ${end.pin} of the ${nameOf(end, machine)}, and ${there} at ` +
          `pin ${other.pin} of the ${nameOf(other, machine)}: it is one wire, so look which is right`
        report.add(machine, ['connectors', end.plug, 'pins', end.pin], says)
      }
    }
  }
}

function colourAt({ plug, pin }: End, { connectors }: Machine): string | undefined {
  return entry(connectors, plug).pins[pin]?.wire.join('/')
}

const nameOf = ({ plug }: End, { connectors }: Machine) => entry(connectors, plug).name
