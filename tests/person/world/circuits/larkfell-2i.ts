import type { Circuit, Stretch } from '../circuit.ts'

const wire = (from: string, a: number, to: string, b: number): Stretch => [
  [from, a],
  [to, b],
]

/** The twin with injection, as its sheet says it in words. */
export const larkfell: Circuit = {
  ends: {
    'exciter-start': ['exciter-plug', 1, 2],
    'exciter-run': ['exciter-plug', 3, 2],
    'pickup-left': ['pickup-plug', 1, 2],
    'pickup-right': ['pickup-plug', 3, 4],
    lighting: ['power-plug', 1, 2],
    injection: ['power-plug', 3, 4],
    'pump-winding': ['power-plug', 5, 6],
    'pickup-injection': ['injection-pickup-plug', 1, 2],
    'coil-left': ['coil-plug-left', 1, 2],
    'coil-right': ['coil-plug-right', 1, 2],
    'stop-switch': ['stop-switch-plug', 1, 2],
    tether: ['tether-plug', 1, 2],
    'throttle-safety': ['throttle-plug', 1, 2],
    'lamp-switch': ['lamp-switch-plug', 1, 2],
    'headlamp-left': ['headlamp-plug', 1, 2],
    pump: ['pump-plug', 1, 2],
    'injector-left': ['injector-plug-left', 1, 2],
    'injector-right': ['injector-plug-right', 1, 2],
  },
  legs: {},
  wires: {
    'wires-exciter-start': [wire('exciter-plug', 1, 'igniter-plug', 1)],
    'wires-exciter-shared': [wire('exciter-plug', 2, 'igniter-plug', 2)],
    'wires-exciter-run': [wire('exciter-plug', 3, 'igniter-plug', 3)],
    'wires-pickup-left': [
      wire('pickup-plug', 1, 'igniter-plug', 4),
      wire('pickup-plug', 2, 'igniter-plug', 5),
    ],
    'wires-pickup-right': [
      wire('pickup-plug', 3, 'igniter-plug', 6),
      wire('pickup-plug', 4, 'igniter-plug', 7),
    ],
    'wires-coil-left': [
      wire('igniter-plug', 8, 'coil-plug-left', 1),
      wire('igniter-plug', 9, 'coil-plug-left', 2),
    ],
    'wires-coil-right': [
      wire('igniter-plug', 10, 'coil-plug-right', 1),
      wire('igniter-plug', 11, 'coil-plug-right', 2),
    ],
    'wires-stop': [
      wire('stop-plug', 1, 'stop-switch-plug', 1),
      wire('stop-plug', 1, 'tether-plug', 1),
      wire('stop-plug', 1, 'throttle-plug', 1),
    ],
    'wires-lighting': [
      wire('power-plug', 1, 'regulator-plug', 1),
      wire('power-plug', 2, 'regulator-plug', 2),
    ],
    'wires-lamps': [
      wire('regulator-plug', 3, 'lamp-switch-plug', 1),
      wire('lamp-switch-plug', 2, 'headlamp-plug', 1),
    ],
    'wires-injection': [
      wire('power-plug', 3, 'injection-plug', 1),
      wire('power-plug', 4, 'injection-plug', 2),
    ],
    'wires-pump-winding': [
      wire('power-plug', 5, 'injection-plug', 3),
      wire('power-plug', 6, 'injection-plug', 4),
    ],
    'wires-pump': [
      wire('injection-plug', 5, 'pump-plug', 1),
      wire('injection-plug', 6, 'pump-plug', 2),
    ],
    'wires-pickup-injection': [
      wire('injection-pickup-plug', 1, 'signal-plug', 5),
      wire('injection-pickup-plug', 2, 'signal-plug', 6),
    ],
    'wires-injector-left': [
      wire('signal-plug', 1, 'injector-plug-left', 1),
      wire('signal-plug', 2, 'injector-plug-left', 2),
    ],
    'wires-injector-right': [
      wire('signal-plug', 3, 'injector-plug-right', 1),
      wire('signal-plug', 4, 'injector-plug-right', 2),
    ],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 12]],
    'stop-ground': [
      ['stop-switch-plug', 2],
      ['tether-plug', 2],
      ['throttle-plug', 2],
    ],
    'regulator-ground': [['regulator-plug', 4]],
    'lamp-ground': [['headlamp-plug', 2]],
    'unit-ground': [['injection-plug', 7]],
  },
  joints: {
    'pickup-plug': [1, 2, 3, 4].map((pin) => ['pickup-plug', pin] as const),
    'regulator-pin': [['regulator-plug', 4]],
  },
  boxes: [
    {
      part: 'igniter',
      inputs: [
        [
          ['igniter-plug', 1],
          ['igniter-plug', 2],
        ],
        [
          ['igniter-plug', 3],
          ['igniter-plug', 2],
        ],
        [
          ['igniter-plug', 4],
          ['igniter-plug', 5],
        ],
        [
          ['igniter-plug', 6],
          ['igniter-plug', 7],
        ],
      ],
      outputs: [
        [
          ['igniter-plug', 8],
          ['igniter-plug', 9],
        ],
        [
          ['igniter-plug', 10],
          ['igniter-plug', 11],
        ],
      ],
      ground: ['igniter-plug', 12],
      stop: ['stop-plug', 1],
    },
    {
      part: 'injection-unit',
      inputs: [
        [
          ['injection-plug', 1],
          ['injection-plug', 2],
        ],
        [
          ['injection-plug', 3],
          ['injection-plug', 4],
        ],
        [
          ['signal-plug', 5],
          ['signal-plug', 6],
        ],
      ],
      outputs: [
        [
          ['injection-plug', 5],
          ['injection-plug', 6],
        ],
        [
          ['signal-plug', 1],
          ['signal-plug', 2],
        ],
        [
          ['signal-plug', 3],
          ['signal-plug', 4],
        ],
      ],
      ground: ['injection-plug', 7],
    },
  ],
  apart: [
    'flywheel',
    'flywheel-key',
    ...['igniter-left', 'igniter-right', 'unit-left', 'unit-right'],
    ...['lead-left', 'cap-left', 'plug-left', 'cylinder-left'],
    ...['lead-right', 'cap-right', 'plug-right', 'cylinder-right'],
    ...['flooding', 'fuel', 'old-fuel', 'regulator', 'headlamp-right', 'tail-lamp'],
  ],
  ropeStarter: 'recoil-starter',
  electricStart: false,
}
