import {
  byTenths,
  type Calibration,
  hitsAmong,
  type Said,
  tenthOf,
} from '../diagnosis/rates/calibration.ts'
import type { ConfirmedRepair } from '../jobs/record/confirmed.ts'
import type { CalibrationRow, RatesPage } from './page.ts'
import { share } from './words.ts'

/** How often it was what was said, of the repairs that count. */
export function presentCalibration(repairs: readonly ConfirmedRepair[]): RatesPage['calibration'] {
  const sure = repairs.filter(({ said }) => said?.named && tenthOf(said.chance) === 9)
  return {
    says: saysOfNamed(hitsAmong(sure.flatMap(saidOf))),
    meaning: calibrationMeaning,
    rows: byTenths(repairs.flatMap(saidOf)).map(presentRow),
  }
}

const calibrationMeaning =
  'Below, by tenths, is the likeliest part as it stood before the first repair, whether it was named or not, or that it was none of those listed, where that was the verdict. The last column is where the true share lies, nineteen times in twenty (Wilson’s interval). Only jobs whose complaint is gone can say what it was.'

/** It was so if all parts that were said are among those that cured it, or none was said and none did. */
function saidOf({ said, parts }: ConfirmedRepair): Said[] {
  if (said === null) return []
  const right =
    said.parts.length > 0 ? said.parts.every((part) => parts.includes(part)) : parts.length === 0
  return [{ chance: said.chance, right }]
}

function saysOfNamed({ said, right, interval }: ReturnType<typeof hitsAmong>): string {
  if (said === 0)
    return 'No part that was named at 90\u00a0% or more has been confirmed or refuted yet.'
  const [low, high] = interval
  const parts = said === 1 ? 'the one part' : `the ${said} parts`
  return `Of ${parts} named at 90\u00a0% or more, ${right} ${right === 1 ? 'was' : 'were'} what cured it: ${share(right / said)}, and the true share lies between ${share(low)} and ${share(high)}, nineteen times in twenty.`
}

function presentRow({ from, to, said, right, interval: [low, high] }: Calibration): CalibrationRow {
  return {
    chance: `${Math.round(100 * from)} to ${Math.round(100 * to)}\u00a0%`,
    said: String(said),
    right: String(right),
    share: share(right / said),
    interval: `${share(low)} to ${share(high)}`,
  }
}
