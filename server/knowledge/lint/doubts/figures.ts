import { entry, named } from '../../../diagnosis/model/named.ts'
import type { Quantity } from '../../../measure/reading/quantity.ts'
import type { Limits } from '../../../measure/reading/reading.ts'
import { limitsOf } from '../../instantiate/card/measured.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine, PartKind } from '../../schema/index.ts'
import type { Part, Reach, SheetLimits } from '../../schema/machine.ts'

/** The limits of one property of a part, with all that the sheet says of them. */
export interface Figure {
  readonly part: Part
  readonly property: string
  readonly says: PartKind['properties'][string]
  readonly quantity: Quantity
  readonly sheet: SheetLimits
  /** The same as numbers, in the unit of the quantity. */
  readonly limits: Limits
  readonly reaches: readonly Reach[]
  readonly path: readonly PropertyKey[]
}

/** What is measured on each part of a machine, in the order of its sheet. */
export function figuresOf(machine: Machine, { partKinds, quantities }: Knowledge): Figure[] {
  return machine.parts.flatMap((part, p) =>
    Object.entries(part.limits ?? {}).map(([property, sheet]) => {
      const says = entry(named(partKinds, part.kind).properties, property)
      return {
        part,
        property,
        says,
        quantity: entry(quantities, says.quantity),
        sheet,
        limits: limitsOf(sheet),
        reaches: (part.reach ?? []).filter((reach) => reach.for.includes(property)),
        path: ['parts', p, 'limits', property],
      }
    }),
  )
}

/** Whether it adds up with others in series, as ohms from end to end do. */
export const addsUp = ({ quantity }: Figure): boolean => quantity.path === 'end to end'

/** Whether it is copper alone, corrected to the temperature of its limits. */
export const isCopper = ({ says }: Figure): boolean => says.material === 'copper'

export const sides = ['low', 'high'] as const

/** Whether both are read with the probes on the same two places. */
export const sharesPlace = (one: Figure, other: Figure): boolean =>
  one.reaches.some((here) => other.reaches.some((there) => placeOf(here) === placeOf(there)))

const placeOf = ({ at, pins, touch }: Reach) => JSON.stringify([at, pins, touch])
