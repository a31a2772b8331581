import type { Random } from '../../../server/practice/world/chance.ts'
import { partsIn } from '../../../server/practice/world/sheet.ts'
import { type Standing, sittingAt } from './standing.ts'
import type { World } from './world.ts'

/** The world at one moment, with what is done to it: all that physics looks at. */
export interface Site {
  readonly world: World
  readonly standing: Standing
  /** Minutes since the job was opened. */
  readonly clock: number
  readonly random: Random
  readonly doing: Doing
}

/** What is done to the machine while it is watched. */
export interface Doing {
  /** Part that is shaken, tapped or bent, or `all`. */
  readonly shaken?: string
  /** Part that is wetted, or `all`. */
  readonly wetted?: string
  /** Part that is warmed with a gun or cooled with a spray, to °C. */
  /** V that an insulation tester puts on it. */
  readonly testVolts?: number
  /** The flywheel stands where the points are open; left out, they are closed. */
  readonly pointsOpen?: boolean
  /** Everything is lifted off the terminal of the points. */
  readonly lifted?: boolean
  /** A good condenser is clipped beside the old one. */
  readonly besideIt?: boolean
  /** It is provoked until it comes; false: it is left in peace, and what comes and goes is gone. */
  readonly certain?: boolean
  /** The key is held at START. */
  readonly atStart?: boolean
  readonly tempered?: { readonly part: string; readonly celsius: number }
}

export const doing = (site: Site, doing: Doing): Site => ({ ...site, doing })

/** The part of a role that sits at an output now: two that were exchanged have changed places. */
export function seated({ world, standing }: Site, role: string, output?: string): string {
  const part = partsIn(world.machine, role, output)[0]
  if (part === undefined) throw new Error(`${world.machine.id} has no ${role}.`)
  return sittingAt(standing, part.id)
}

export const has = ({ world }: Site, role: string): boolean =>
  partsIn(world.machine, role).length > 0

/** The part that sits where the sheet has this one. */
export const seatOf = ({ standing }: Site, part: string): string => sittingAt(standing, part)
