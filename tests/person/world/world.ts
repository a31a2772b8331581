import type { Machine } from '../../../server/knowledge/schema/machine.ts'
import type { Meter } from '../../../server/practice/world/meter.ts'
import type { Circuit } from './circuit.ts'
import type { Effect } from './effect.ts'
import type { GoodPart } from './good-part.ts'
import type { Person } from './person.ts'

/** A machine with something wrong with it, the weather, and the person who stands there. */
export interface World {
  readonly seed: number
  readonly machine: Machine
  readonly circuit: Circuit
  /** What the owner complains of. */
  readonly complaint: string
  readonly good: ReadonlyMap<string, GoodPart>
  readonly faults: readonly HiddenFault[]
  /** Parts that have been replaced: age has not marked them. */
  readonly renewed: ReadonlySet<string>
  /** A cause that no tree holds; then nothing electrical is wrong. */
  readonly elsewhere: boolean
  readonly weather: Weather
  readonly person: Person
  readonly meter: Meter
}

export interface HiddenFault {
  readonly part: string
  readonly mode: string
  readonly effect: Effect
}

export interface Weather {
  /** °C of the air, as the thermometer has it. */
  readonly air: number
  /** °C of parts that nobody has warmed. */
  readonly parts: number
}

/** The world once these parts are new: what was wrong with them is gone. */
export function cured(world: World, parts: readonly string[]): World {
  return {
    ...world,
    faults: world.faults.filter(({ part }) => !parts.includes(part)),
    renewed: new Set([...world.renewed, ...parts]),
  }
}

/** Left and right cylinder, or the only one. */
export const outputsOf = ({ machine }: World): readonly string[] =>
  machine.outputs.map(({ id }) => id)
