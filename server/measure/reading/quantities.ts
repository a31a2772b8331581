import type { Quantity } from './quantity.ts'
import {
  besideAPath,
  blades,
  clippedOn,
  contactAdds,
  held,
  lost,
  pulls,
  turns,
  whileItRuns,
} from './touching.ts'

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

/** What a wire, a fuse or a ground loses in use: the less the better, and no low limit. */
const drop = {
  ...volts,
  // No battery and no lighting winding here has more to lose.
  most: 100,
  negative: 'What is lost has no sign: exchange the probes, or write it without the sign.',
  bands: ['in range', 'high', 'open'],
  bandNames: { open: 'far too high' },
  touches: lost,
  corrections: [],
  goodOne: 'loses',
  examples: { few: '0.08 or 80m', all: '0.08, 0,08 or 80m', several: '0.08 0.09 0.08' },
} as const

/** Where the crankshaft stands as something happens, before the top of the stroke. */
const beforeTop = {
  kinds: ['btdc', 'before top'],
  negative: 'Behind the top there is nothing before it: write 0.',
  bands: ['low', 'in range', 'high'],
  bandNames: { low: 'too late', high: 'too early' },
  overRange: null,
  whenOver: 'OL means nothing here: answer that you could not tell where it never happens.',
  touches: turns,
  corrections: [],
  said: (reading: string) => `came ${reading} before the top`,
  goodOne: 'comes before the top by',
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
    touches: whileItRuns,
    corrections: ['speed'],
    mistakes: ['far above'],
    said: (reading) => `gave ${reading} AC`,
    examples: { few: '24.6 or 0.3', all: '24.6, 12,5 or 300m', several: '24.3 24.8 24.6' },
  },
  // What a regulator holds does not follow the speed, once there is enough of it.
  'regulated-voltage': {
    ...volts,
    id: 'regulated-voltage',
    name: 'regulated AC voltage',
    setting: 'ac-voltage',
    kinds: ['ac', 'rms', '~'],
    touches: held,
    corrections: [],
    said: (reading) => `gave ${reading} AC`,
    examples: { few: '13.2 or 0.3', all: '13.2, 12,5 or 300m', several: '13.2 13.3 13.2' },
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
    mistakes: ['far above'],
    said: (reading) => `gave ${reading} peak`,
    examples: { few: '145 or 0.4', all: '145, 12.5, 0,4 or 300m', several: '141 150 147' },
  },
  // As it is, whatever the speed: a battery or a regulator holds it.
  'dc-voltage': {
    ...volts,
    id: 'dc-voltage',
    name: 'DC voltage',
    setting: 'dc-voltage',
    kinds: ['dc'],
    most: 1000,
    negative: 'Below zero the probes are the wrong way round: exchange them and measure again.',
    touches: held,
    corrections: [],
    mistakes: ['thousand off'],
    said: (reading) => `gave ${reading} DC`,
    examples: { few: '12.6 or 0.4', all: '14.2, 12,6 or 400m', several: '14.1 14.2 14.1' },
  },
  'voltage-drop': {
    ...drop,
    id: 'voltage-drop',
    name: 'voltage drop',
    setting: 'dc-voltage',
    kinds: ['dc'],
    said: (reading) => `lost ${reading}`,
  },
  'ac-voltage-drop': {
    ...drop,
    id: 'ac-voltage-drop',
    name: 'AC voltage drop',
    setting: 'ac-voltage',
    kinds: ['ac', 'rms', '~'],
    said: (reading) => `lost ${reading} AC`,
  },
  capacitance: {
    id: 'capacitance',
    name: 'capacitance',
    unit: 'µF',
    setting: 'capacitance',
    kinds: [],
    negative:
      'A capacitance is never negative: lift the wire off, touch it to the case once and measure again.',
    bands: ['short', 'low', 'in range', 'high'],
    bandNames: { short: 'none' },
    overRange: 'high',
    whenOver: 'OL means that it is shorted or leaks: send it as OL.',
    touches: clippedOn,
    corrections: [],
    mistakes: ['thousand off'],
    said: (reading) => `read ${reading}`,
    goodOne: 'has',
    examples: { few: '0.22 or OL', all: '0.22, 0,22, 220 nF or OL', several: '0.22 0.23 0.22' },
  },
  // Known to within a blade: the one that goes in, and the next, which does not.
  gap: {
    id: 'gap',
    name: 'gap',
    unit: 'mm',
    setting: 'gap',
    kinds: [],
    most: 50,
    negative: 'A gap is never negative: write 0 where not even the thinnest blade goes in.',
    bands: ['short', 'low', 'in range', 'high'],
    bandNames: { short: 'closed', low: 'too narrow', high: 'too wide' },
    overRange: null,
    whenOver: 'OL means nothing on a feeler gauge: write the thickest blade that goes in.',
    touches: blades,
    corrections: ['next blade'],
    mistakes: ['other unit'],
    said: (reading) => (/^0[^.\d]/.test(reading) ? 'took no blade' : `took the ${reading} blade`),
    goodOne: 'measures',
    examples: {
      few: '0.3 or 12 thou',
      all: '0.3, 0,3 mm, 0.012 in or 12 thou',
      several: '0.3 0.35 0.3',
    },
  },
  'piston-travel': {
    ...beforeTop,
    id: 'piston-travel',
    name: 'piston travel before the top',
    unit: 'mm',
    setting: 'piston-travel',
    most: 100,
    mistakes: ['other unit'],
    crank: 'travel',
    examples: {
      few: '2.1 or 0.083 in',
      all: '2.1, 2,1 mm or 0.083 in',
      several: '2.1 2.15 2.1',
    },
  },
  angle: {
    ...beforeTop,
    id: 'angle',
    name: 'angle before the top',
    unit: '°',
    setting: 'angle',
    most: 180,
    mistakes: [],
    crank: 'angle',
    examples: { few: '21 or 20.5°', all: '21, 20.5 or 20,5°', several: '21 20.5 21' },
  },
} satisfies Readonly<Record<string, Quantity>>

export type QuantityId = keyof typeof rows
/** The rows that knowledge may measure by: those that ship, or those and more. */
export type Quantities = Readonly<Record<string, Quantity>>
/** The kinds of reading that ship. One row is all there is to a kind of reading. */
export const quantities: Readonly<Record<QuantityId, Quantity>> = rows
