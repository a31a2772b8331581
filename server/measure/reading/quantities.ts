import type { Quantity } from './quantity.ts'
import { besideAPath, contactAdds, pulls } from './touching.ts'

const ohms = {
  unit: 'Ω',
  setting: 'resistance',
  kinds: [],
  negative: 'A resistance is never negative: stop the engine, unplug the part and measure again.',
  said: (reading: string) => `read ${reading}`,
  goodOne: 'reads',
} as const

const volts = {
  unit: 'V',
  negative:
    'This voltage is never negative: write it without the sign, or check the range and measure again.',
  bands: ['short', 'low', 'in range', 'high'],
  bandNames: { short: 'none' },
  overRange: null,
  whenOver: 'OL means that the range is too small: switch to a higher range and measure again.',
  mistakes: [],
  goodOne: 'gives',
} as const

const rows = {
  resistance: {
    ...ohms,
    id: 'resistance',
    name: 'resistance',
    bands: ['short', 'low', 'in range', 'high', 'open'],
    bandNames: {},
    overRange: 'open',
    whenOver: 'OL means that nothing conducts: send it as OL.',
    touches: contactAdds,
    corrections: ['copper'],
    mistakes: ['thousand off', 'wrong pins', 'harness left plugged', 'fingers'],
    path: 'end to end',
    instead: { quantities: ['ac-voltage', 'peak-voltage'], says: 'output voltage' },
    examples: {
      few: '52.5, 4.7k or OL',
      all: '365, 0,27, 4.7k, 4k7, 1.2M or OL',
      several: '52.7 58.1 52.5',
    },
  },
  // A path that must not exist: to the core, or through an open switch. OL is what one hopes for.
  isolation: {
    ...ohms,
    id: 'isolation',
    name: 'resistance to ground',
    bands: ['short', 'low', 'in range'],
    bandNames: {
      short: 'a path to ground',
      low: 'leaks to ground',
      'in range': 'no path to ground',
    },
    overRange: 'in range',
    whenOver: 'OL means that there is no path: send it as OL.',
    touches: besideAPath,
    corrections: [],
    mistakes: [],
    path: 'must not be',
    examples: { few: 'OL, 12M or 470k', all: 'OL, 12M, 2,5M or 470k', several: '12M 11M 12M' },
  },
  'ac-voltage': {
    ...volts,
    id: 'ac-voltage',
    name: 'AC voltage',
    setting: 'ac-voltage',
    kinds: ['ac', 'rms', '~'],
    touches: pulls,
    corrections: ['speed'],
    said: (reading) => `gave ${reading} AC`,
    examples: { few: '24.6 or 0.3', all: '24.6, 12,5 or 300m', several: '24.3 24.8 24.6' },
  },
  // Read on the DC range, behind a peak-hold adaptor.
  'peak-voltage': {
    ...volts,
    id: 'peak-voltage',
    name: 'peak voltage',
    setting: 'dc-voltage',
    kinds: ['pk', 'peak', 'p', 'dc'],
    touches: pulls,
    corrections: ['adaptor', 'speed'],
    said: (reading) => `gave ${reading} peak`,
    examples: { few: '145 or 0.4', all: '145, 12.5, 0,4 or 300m', several: '141 150 147' },
  },
} satisfies Readonly<Record<string, Quantity>>

export type QuantityId = keyof typeof rows
/** The rows that knowledge may measure by: those that ship, or those and more. */
export type Quantities = Readonly<Record<string, Quantity>>
/** The kinds of reading that ship. One row is all there is to a kind of reading. */
export const quantities: Readonly<Record<QuantityId, Quantity>> = rows
