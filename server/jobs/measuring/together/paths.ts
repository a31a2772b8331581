import type { CheckCard } from '../../../knowledge/case.ts'
import type { Machine, Part, Reach } from '../../../knowledge/schema/machine.ts'
import type { Read } from './types.ts'

/** The way of the sheet that a check goes, and whose part it reads. */
export interface Path {
  readonly part: Part
  readonly reach: Reach
}

export function pathOf(
  { parts }: Machine,
  { part: id, measurand, spot }: CheckCard,
): Path | undefined {
  const part = parts.find((each) => each.id === id)
  const reach = part?.reach?.find(
    (each) =>
      each.for.includes(measurand!.property) &&
      each.at === spot?.connector?.id &&
      (each.pins?.map(String) ?? each.touch)?.join() === spot?.touch.join(),
  )
  return part && reach && { part, reach }
}

export type Pair = readonly [Read, Read]
export type Paths = ReadonlyMap<Read, Path | undefined>

/** The parts that stand between the probes and the part. */
export const through = ({ reach }: Path): readonly string[] => reach.through ?? []
/** From end to end of a part, so that parts in series add up. */
export const isEndToEnd = ({ card }: Read) => card.measurand!.quantity.path === 'end to end'
/** A path that must not be there. */
export const isUnwanted = ({ card }: Read) => card.measurand!.quantity.path === 'must not be'
