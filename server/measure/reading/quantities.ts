import type { Unit } from './units.ts'

/**
 * The kinds of quantity a reading can be. One row here, one parser branch in `parse.ts` and one
 * judge in `judge.ts` make a kind of reading.
 */
export const bands = ['short', 'low', 'in range', 'high', 'open'] as const
export type Band = (typeof bands)[number]

export interface Quantity {
  readonly id: QuantityId
  readonly name: string
  readonly unit: Unit
  /** Bands a reading of this quantity can fall into, in rising order of value. */
  readonly bands: readonly Band[]
  /** The band of a meter that shows `OL` (over its range), or null where that cannot be judged. */
  readonly overRange: Band | null
  /** What the band is called for this quantity, where the plain word would mislead. */
  readonly bandNames: Readonly<Partial<Record<Band, string>>>
}

export type QuantityId = 'resistance' | 'isolation' | 'ac-voltage' | 'peak-voltage'

export const quantities: Readonly<Record<QuantityId, Quantity>> = {
  resistance: {
    id: 'resistance',
    name: 'resistance',
    unit: 'Ω',
    bands: ['short', 'low', 'in range', 'high', 'open'],
    overRange: 'open',
    bandNames: {},
  },
  // A path that must not exist: to the core, or through an open switch. OL is what one hopes for.
  isolation: {
    id: 'isolation',
    name: 'resistance to ground',
    unit: 'Ω',
    bands: ['short', 'low', 'in range'],
    overRange: 'in range',
    bandNames: {
      short: 'a path to ground',
      low: 'leaks to ground',
      'in range': 'no path to ground',
    },
  },
  'ac-voltage': {
    id: 'ac-voltage',
    name: 'AC voltage',
    unit: 'V',
    bands: ['short', 'low', 'in range', 'high'],
    overRange: null,
    bandNames: { short: 'none' },
  },
  'peak-voltage': {
    id: 'peak-voltage',
    name: 'peak voltage',
    unit: 'V',
    bands: ['short', 'low', 'in range', 'high'],
    overRange: null,
    bandNames: { short: 'none' },
  },
}
