import type { Case, CheckCard, PartCard, SetupCard } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import type { Material } from '../../server/measure/correct/temperature.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'

const source = 'invented for the test'

const caution = {
  id: 'keep-clear',
  signal: 'warning',
  command: 'Keep clear.',
  says: 'Keep clear of the belt.',
  phone: 'Keep clear of the belt.',
  reminds: 'clear of the belt',
} as const

const part = (id: string, name: string, more: Partial<PartCard> = {}): PartCard => ({
  id,
  name,
  repair: `Replace the ${id}.`,
  prove: { stopped: `Measure the new ${id}.` },
  cautions: [],
  ...more,
})

const parts = [
  part('exciter', 'Start exciter', { where: 'behind the flywheel', cautions: [caution] }),
  part('coil', 'Ignition coil'),
  part('igniter', 'Igniter'),
]

const card = (id: string, more: Partial<CheckCard>): CheckCard => ({
  id,
  title: `Check ${id}`,
  engine: 'stopped',
  where: ['bench', 'trailside'],
  tools: [],
  forbids: [],
  minutes: 2,
  setups: [],
  do: ['Look at it.'],
  phone: ['Look at it.'],
  asks: 'Look at it.',
  why: 'It tells.',
  owner: { fit: true, needs: [] },
  cautions: [],
  outcomes: [],
  ...more,
})

const resistance = (low: number, high: number, material: Material): Partial<CheckCard> => ({
  tools: [{ id: 'meter', name: 'Multimeter' }],
  meter: 'Ohms',
  measurand: {
    property: 'resistance',
    quantity: quantities.resistance,
    limits: { low, high },
    limitsSource: source,
    material,
  },
  outcomes: quantities.resistance.bands,
})

const cover: SetupCard = {
  id: 'cover',
  do: 'Take off the cover.',
  minutes: 3,
  undo: { do: 'Put the cover back on', minutes: 2 },
}
const unplug: SetupCard = {
  id: 'unplug stator',
  do: 'Unplug the stator plug.',
  minutes: 1,
  undo: { do: 'Join the stator plug again.', minutes: 0.5 },
}

const cards = [
  card('exciter.resistance', {
    ...resistance(310, 420, 'copper'),
    title: 'Resistance of the start exciter',
    part: 'exciter',
    cautions: [caution],
    do: ['Touch both pins.', 'Read the meter'],
    setups: [cover, unplug],
    spot: {
      says: 'the stator plug, pins 1 and 2',
      touch: ['1', '2'],
      awkward: true,
      connector: {
        id: 'stator',
        card: {
          name: 'stator plug',
          where: 'left of the engine',
          face: {
            rows: [[1, 2]],
            latch: 'top',
            view: 'looking into the stator half',
            shape: 'block',
          },
          unplug: { minutes: 1, do: 'Unplug the stator plug.' },
          pins: {
            '1': { wire: ['BK', 'RD'], to: 'start exciter' },
            '2': { wire: ['WH'], to: 'start exciter, other end' },
          },
        },
      },
    },
  }),
  card('coil.resistance', {
    ...resistance(5000, 8000, 'not copper'),
    title: 'Resistance of the ignition coil',
    part: 'coil',
    setups: [cover],
    forbids: [unplug],
    spot: { says: 'the coil tower and bare metal', touch: ['tower', 'ground'], awkward: false },
  }),
  card('spark', {
    title: 'Spark on the tester',
    engine: 'cranking',
    forbids: [unplug, cover],
    outcomes: ['none', 'good'],
    answers: [
      { id: 'none', says: 'No spark', phone: 'No spark' },
      { id: 'good', says: 'Good spark', phone: 'Good spark' },
    ],
  }),
  card('igniter.swap', {
    title: 'A known good igniter',
    part: 'igniter',
    tools: [{ id: 'good-igniter', name: 'Known good igniter' }],
    outcomes: ['cured', 'as-before'],
    answers: [
      { id: 'cured', says: 'It runs', phone: 'It runs' },
      { id: 'as-before', says: 'As before', phone: 'As before' },
    ],
  }),
]

const fault = (of: string, mode: string, says: string, rate: number) => ({
  id: `${of}.${mode}`,
  part: of,
  says,
  rate,
  pronoun: 'it' as const,
  rateSource: source,
  comesAndGoesWith: [],
})

const faults = [
  fault('exciter', 'open', 'is open somewhere in the winding', 30),
  fault('exciter', 'turns', 'has shorted turns', 20),
  fault('coil', 'open', 'is open', 20),
  fault('igniter', 'dead', 'gives no pulse', 27),
]

const prior = [0.3, 0.2, 0.2, 0.27]

const chances = {
  // short, low, in range, high, open; a cut set each, the last for a cause outside the tree
  'exciter.resistance': [
    [0, 0, 0.02, 0, 0.98],
    [0, 0.5, 0.5, 0, 0],
    [0, 0.01, 0.97, 0.01, 0.01],
    [0, 0.01, 0.97, 0.01, 0.01],
    [0, 0.01, 0.97, 0.01, 0.01],
  ],
  'coil.resistance': [
    [0, 0.01, 0.97, 0.01, 0.01],
    [0, 0.01, 0.97, 0.01, 0.01],
    [0, 0, 0.02, 0, 0.98],
    [0, 0.01, 0.97, 0.01, 0.01],
    [0, 0.01, 0.97, 0.01, 0.01],
  ],
  spark: [
    [0.999, 0.001],
    [0.99, 0.01],
    [0.999, 0.001],
    [0.999, 0.001],
    [0.001, 0.999],
  ],
  'igniter.swap': [
    [0.01, 0.99],
    [0.01, 0.99],
    [0.01, 0.99],
    [0.99, 0.01],
    [0.01, 0.99],
  ],
}

/** Three parts, four faults and four checks: small enough to say every sentence of a page in advance. */
export const smallCase: Case = {
  machine: {
    id: 'wren',
    maker: 'Mossgill',
    name: 'Wren 1',
    family: 'Wrens',
    about: 'A pump with a pull start.',
    source,
    outputs: [{ id: 'one', name: 'cylinder' }],
    access: {},
    sparkGap: { mm: 8, source },
    connectors: {},
    parts: [
      { id: 'exciter', kind: 'winding', role: 'exciter', name: 'Start exciter' },
      { id: 'coil', kind: 'coil', role: 'coil', name: 'Ignition coil' },
      { id: 'igniter', kind: 'igniter', role: 'igniter', name: 'Igniter' },
    ],
  },
  complaint: {
    id: 'no-spark',
    title: 'No spark',
    group: 'spark',
    owner: 'It does not even cough.',
    needs: ['exciter'],
    top: 'no-spark',
    gates: {},
    elsewhere: { share: 0.03, says: 'Look at the fuel and at the compression.', source },
    prove: { running: 'Start it three times.' },
    home: { try: {}, never: ['hold-lead'] },
  },
  model: {
    tree: {
      top: 'no-spark',
      gates: new Map([
        ['no-spark', { kind: 'or', inputs: ['no-supply', 'part:coil', 'part:igniter'] }],
        ['no-supply', { kind: 'or', inputs: ['part:exciter'] }],
        ['part:exciter', { kind: 'or', inputs: ['exciter.open', 'exciter.turns'] }],
        ['part:coil', { kind: 'or', inputs: ['coil.open'] }],
        ['part:igniter', { kind: 'or', inputs: ['igniter.dead'] }],
      ]),
    },
    cutSets: [
      ...faults.map(({ id, part: of }, i) => ({ faults: [id], parts: [of], prior: prior[i]! })),
      { faults: [], parts: [], prior: 0.03 },
    ],
    checks: cards.map(({ id, minutes, setups, outcomes }) => ({
      id,
      minutes,
      setups: setups.map((setup) => ({
        id: setup.id,
        minutes: setup.minutes,
        undo: setup.undo?.minutes ?? 0,
      })),
      outcomes,
      chances: chances[id as keyof typeof chances],
    })),
  },
  leftOut: 0,
  ways: new Map(),
  noWays: new Map(),
  gates: new Map(
    [
      { id: 'no-spark', says: 'There is no spark' },
      { id: 'no-supply', says: 'No supply reaches the igniter' },
      ...parts.map(({ id, name }) => ({ id: `part:${id}`, says: name, part: id })),
    ].map((gate) => [gate.id, gate]),
  ),
  faults: new Map(faults.map((each) => [each.id, each])),
  parts: new Map(parts.map((each) => [each.id, each])),
  checks: new Map(cards.map((each) => [each.id, each])),
}

const always = {
  signal: 'notice',
  command: 'Read the manual.',
  says: 'The manual comes first.',
  phone: 'The manual comes first.',
  reminds: 'the manual comes first',
  everywhere: true,
  source,
} as const

/** The tables that pages of the small case look things up in. */
export const smallKnowledge: Knowledge = {
  quantities,
  complaints: new Map([['no-spark', smallCase.complaint]]),
  partKinds: new Map(),
  checkKinds: new Map(),
  machines: new Map([['wren', smallCase.machine]]),
  roles: { roles: {} },
  glossary: { words: {} },
  owner: {
    kit: { light: { asks: 'A torch', gives: ['torch'] }, partner: { asks: 'Somebody to help' } },
    sets: { bare: { name: 'Hands and eyes', kit: ['light'] } },
    meter: 'pocket',
    answers: { astray: 0.1, pace: 2, talk: 1, metering: 3, earns: 0.5, source },
    gone: { minutes: 3, source },
    cold: { below: 0, without: 'light', most: 3, source },
  },
  home: {
    ways: {},
    whole: 'All is in.',
    choke: 'Set the choke.',
    held: 'See that it cannot move off.',
    halfOpen: { ignition: ['Screw every plug in.'] },
    toRun: {},
    off: 'See that it cannot start: {off}.',
    stopIt: 'Stop it.',
    rest: ['Switch it off.'],
    covers: { before: 'Take off the cover.', after: 'Put it on again.' },
    never: { 'hold-lead': 'Never hold a lead.' },
    trial: {
      do: ['Pull the rope.'],
      go: ['Let it go.'],
      lifted: 'Let down what is lifted.',
      after: ['Go gently.'],
      cautions: [],
    },
    stay: ['It is dark.'],
    afloat: {
      ashore: 'Try it on the water.',
      first: ['Anchor.'],
      launch: ['Launch it.'],
      go: ['Anchor up.'],
      never: ['Never wade.'],
      stay: ['You drift.'],
    },
  },
  circuits: new Map(),
  meters: new Map([
    [
      'pocket',
      {
        id: 'pocket',
        name: 'Pocket meter',
        about: 'Small.',
        ranges: [
          { quantity: 'resistance', top: '400 Ω', digit: '0.1 Ω', percent: 1, counts: 4 },
          { quantity: 'resistance', top: '4 kΩ', digit: '1 Ω', percent: 1, counts: 4 },
          { quantity: 'resistance', top: '40 kΩ', digit: '10 Ω', percent: 1, counts: 4 },
          { quantity: 'dc-voltage', top: '400 V', digit: '0.1 V', percent: 1, counts: 4 },
        ],
        source,
      },
    ],
  ]),
  tools: {
    sets: {
      hands: { name: 'Hands only' },
      trail: { name: 'Trail tools', place: 'trailside' },
      bench: { name: 'Bench tools', place: 'bench' },
    },
    tools: {
      meter: { name: 'Multimeter', usual: ['bench', 'trailside'] },
      'good-igniter': { name: 'Known good igniter', usual: ['bench'] },
      torch: { name: 'Torch', usual: ['bench'] },
      rag: { name: 'Rag', usual: ['bench'] },
      rope: { name: 'Rope', usual: ['trailside'] },
    },
  },
  setups: { setups: {} },
  groups: { groups: { spark: { name: 'Spark' }, fuel: { name: 'Fuel' } } },
  cautions: {
    cautions: {
      manual: always,
      trail: { ...always, everywhere: false, place: 'trailside', says: 'Off the trail first.' },
      burns: { ...always, everywhere: false, hot: true, says: 'The exhaust burns.' },
    },
  },
  colours: {
    source,
    colours: {
      BK: { name: 'black', swatch: '#000000' },
      RD: { name: 'red', swatch: '#ff0000' },
      WH: { name: 'white', swatch: '#ffffff' },
    },
  },
}
