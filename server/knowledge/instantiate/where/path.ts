import type { Reach } from '../../schema/machine.ts'

/** The parts that stand on the way of a reading, besides the one that is read. */
export function throughOf({ through = [] }: Reach): readonly string[] {
  return through.map((each) => (typeof each === 'string' ? each : each.part))
}

/** Whether a failure of a part on the way shows in the reading. */
export function letsThrough({ through = [] }: Reach, part: string, mode: string): boolean {
  return through.some((each) =>
    typeof each === 'string' ? each === part : each.part === part && each.modes.includes(mode),
  )
}
