import { throughOf } from '../../../knowledge/instantiate/where/path.ts'
import type { Machine, Part, Reach } from '../../../knowledge/schema/machine.ts'
import type { Read } from './types.ts'

/** The way of the sheet that a check goes, and whose part it reads. */
export interface Path {
  readonly part: Part
  readonly reach: Reach
}

export function pathOf(
  { parts }: Machine,
  { card: { part: id, spot }, by }: Read,
): Path | undefined {
  const part = parts.find((each) => each.id === id)
  const reach = part?.reach?.find(
    (each) =>
      each.for.includes(by.property) &&
      each.at === spot?.connector?.id &&
      (each.pins?.map(String) ?? each.touch)?.join() === spot?.touch.join(),
  )
  return part && reach && { part, reach }
}

export type Pair = readonly [Read, Read]
export type Paths = ReadonlyMap<Read, Path | undefined>

/** The parts that stand between the probes and the part. */
export const through = ({ reach }: Path): readonly string[] => throughOf(reach)
/** From end to end of a part, so that parts in series add up. */
export const isEndToEnd = ({ by }: Read) => by.quantity.path === 'end to end'
/** A path that must not be there. */
export const isUnwanted = ({ by }: Read) => by.quantity.path === 'must not be'
