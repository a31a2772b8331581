import type { SetupCard } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Connector, Machine } from '../schema/machine.ts'
import type { PlannedCheck } from './checks-of-kind.ts'

/** Covers first, then the connectors, then what the check itself needs fitted; each once. */
export function setupsFor(
  check: PlannedCheck,
  { setups }: Knowledge,
  machine: Machine,
): SetupCard[] {
  const kit = check.kind.setups ?? []
  const apart = apartFor(check)
  return [
    ...coversFor(check, apart, machine).map((id) => coverCard(id, machine)),
    ...apart.map((id) => unplugCard(id, machine)),
    ...kit.map((id) => kitCard(id, setups.setups[id]!)),
  ]
}

/**
 * The last steps of a check, which put back what may not stay as it is: the stop circuit, and then a
 * word on trying it, since an engine that cannot be stopped must not be started unawares.
 */
export function lastSteps(setups: readonly SetupCard[], { stop }: Machine): string[] {
  const joined = setups.flatMap(({ once, undo }) => (once && undo ? [undo.do] : [])).toReversed()
  return joined.length > 0 && stop ? [...joined, stop.try] : joined
}

/** Connectors that a check needs apart. */
function apartFor({ kind, part, reach }: PlannedCheck): readonly string[] {
  const here = kind.apart !== undefined && reach?.at !== undefined ? [reach.at] : []
  const whole = kind.apart === 'part' ? (part?.plugs ?? []) : []
  return [...new Set([...here, ...whole])]
}

function coversFor(
  { kind, reach }: PlannedCheck,
  apart: readonly string[],
  { access, connectors }: Machine,
): readonly string[] {
  const at = reach?.at === undefined ? [] : [reach.at]
  const forKit = Object.entries(access)
    .filter(([, cover]) => cover.for?.some((setup) => kind.setups?.includes(setup)))
    .map(([id]) => id)
  const overPlugs = [...at, ...apart].flatMap((id) => connectors[id]!.access ?? [])
  return [...new Set([...(reach?.access ?? []), ...overPlugs, ...forKit])]
}

function coverCard(id: string, { access }: Machine): SetupCard {
  const { do: says, minutes, undo } = access[id]!
  return { id: `access ${id}`, do: says, minutes, undo }
}

function unplugCard(id: string, { connectors, stop }: Machine): SetupCard {
  const connector = connectors[id]!
  const { do: says, minutes, undo = joined(connector) } = connector.unplug
  const card = { id: `unplug ${id}`, do: says, minutes, undo }
  return stop?.plugs.includes(id) ? { ...card, once: true } : card
}

/** Minutes to join a connector again. From memory. */
const joinMinutes = 0.5

/** How a connector is joined again where its sheet says nothing else. */
function joined({ name, face }: Connector): NonNullable<SetupCard['undo']> {
  const holds =
    face.latch === 'none' ? 'pull at it: it must hold' : 'push until you hear its latch click'
  return { do: `Join the ${name} again and ${holds}.`, minutes: joinMinutes }
}

function kitCard(
  id: string,
  { do: says, minutes, undo, stopOff }: Knowledge['setups']['setups'][string],
): SetupCard {
  const card = { id, do: says, minutes, ...(typeof undo === 'object' && { undo }) }
  return undo === 'fades' || stopOff ? { ...card, once: true } : card
}
