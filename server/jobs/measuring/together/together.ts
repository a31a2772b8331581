import type { Machine } from '../../../knowledge/schema/machine.ts'
import { differenceOf } from './difference.ts'
import { leakOf } from './leak.ts'
import { pathOf } from './paths.ts'
import { twinsAmong } from './twins.ts'
import type { Read, Together } from './types.ts'

export type { Read, Together } from './types.ts'

/** Everything that pairs of these readings say together, in the order of the readings. */
export function readingsTogether(machine: Machine, reads: readonly Read[]): Together[] {
  const valued = reads.filter(({ measured }) => typeof measured.asRead === 'number')
  const paths = new Map(valued.map((read) => [read, pathOf(machine, read)]))
  const pairs = valued.flatMap((one, i) =>
    valued.slice(i + 1).map((other) => [one, other] as const),
  )
  return [
    ...pairs.flatMap((pair) => differenceOf(machine, pair, paths)),
    ...twinsAmong(machine, pairs, paths),
    ...pairs.flatMap((pair) => leakOf(pair, paths)),
  ]
}
