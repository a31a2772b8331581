import type { Random } from './chance.ts'
import { partNamed, partsIn, servedBy } from './sheet.ts'
import type { Standing } from './standing.ts'
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
  /** It is provoked until it comes; false: it is left in peace, and what comes and goes is gone. */
  readonly certain?: boolean
  readonly tempered?: { readonly part: string; readonly celsius: number }
}

export const doing = (site: Site, doing: Doing): Site => ({ ...site, doing })

/** The part of a role that sits at an output now: two that were exchanged have changed places. */
export function seated({ world, standing }: Site, role: string, output?: string): string {
  const at = standing.swapped.has(role) ? otherOutput(world, output) : output
  const part = partsIn(world.machine, role, at)[0]
  if (part === undefined) throw new Error(`${world.machine.id} has no ${role}.`)
  return part.id
}

export const has = ({ world }: Site, role: string): boolean =>
  partsIn(world.machine, role).length > 0

function otherOutput({ machine }: World, output: string | undefined): string | undefined {
  return output && (machine.outputs.find(({ id }) => id !== output)?.id ?? output)
}

/** Pairs that can be told apart by output: which seat a part belongs to by its name is another question. */
export function seatOf(site: Site, part: string): string {
  const sheet = partNamed(site.world.machine, part)
  const [output] = servedBy(sheet)
  return output === undefined ? part : seated(site, sheet.role, output)
}
