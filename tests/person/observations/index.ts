import type { Observation } from '../check.ts'
import { bogsChecks } from './bogs.ts'
import { chargingChecks } from './charging.ts'
import { comparingChecks } from './comparing.ts'
import { dashChecks } from './dash.ts'
import { engineChecks } from './engine.ts'
import { firstMovesChecks } from './first-moves.ts'
import { fuelChecks } from './fuel.ts'
import { gapsChecks } from './gaps.ts'
import { hotStartChecks } from './hot-start.ts'
import { lightsChecks } from './lights.ts'
import { looksChecks } from './looks.ts'
import { ohmsChecks } from './ohms.ts'
import { ownerChecks } from './owner.ts'
import { ownerOfLightsChecks } from './owner-of-lights.ts'
import { pointsChecks } from './points.ts'
import { sparkChecks } from './spark.ts'
import { startingChecks } from './starting.ts'
import { voltsChecks } from './volts.ts'

/** What comes back from each kind of check. A new kind gets its function in the file of its subject. */
export const observations: Readonly<Record<string, Observation>> = {
  ...ownerChecks,
  ...ownerOfLightsChecks,
  ...looksChecks,
  ...ohmsChecks,
  ...pointsChecks,
  ...gapsChecks,
  ...comparingChecks,
  ...voltsChecks,
  ...sparkChecks,
  ...engineChecks,
  ...fuelChecks,
  ...hotStartChecks,
  ...lightsChecks,
  ...chargingChecks,
  ...startingChecks,
  ...dashChecks,
  ...bogsChecks,
  ...firstMovesChecks,
}

/** @throws Error with where to add it, for a kind that nobody has told the person how to make */
export function observationOf(kind: string): Observation {
  const observation = observations[kind]
  if (observation !== undefined) return observation
  throw new Error(
    `The literal person does not know what the world shows of "${kind}": add a function of that name to the file of its subject in tests/person/observations/.`,
  )
}
