import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { shippedKnowledge } from './knowledge.ts'

const quickest = ['lamps-too-bright', 'will-not-stop']
/** On which they are quick. */
const machines = ['fernslade-1p', 'freshet-4d', 'pedlar-1c']

/** The shipped knowledge with its quickest complaints only, on few machines: new each time, so that nothing is known of it. */
export function fewCases(): Knowledge {
  const few = fewComplaints()
  return { ...few, machines: those(few.machines, machines) }
}

/** The same on every machine, and with more complaints where one asks for them. */
export function fewComplaints(...more: readonly string[]): Knowledge {
  const shipped = shippedKnowledge()
  return { ...shipped, complaints: those(shipped.complaints, [...quickest, ...more]) }
}

function those<T>(all: ReadonlyMap<string, T>, few: readonly string[]): Map<string, T> {
  const found = new Map([...all].filter(([id]) => few.includes(id)))
  if (found.size !== few.length) throw new Error(`The shipped trees lack one of ${few}.`)
  return found
}
