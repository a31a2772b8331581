import type { Circuit, Stretch } from '../circuit.ts'

const wire = (from: string, a: number, to: string, b: number): Stretch => [
  [from, a],
  [to, b],
]

const cylinders = [1, 2, 3, 4]

/** The fire pump with four cylinders on two coils and two pickups, as its sheet says it in words. */
export const freshet: Circuit = {
  ends: {
    exciter: ['stator-plug', 1, 2],
    'pickup-outer': ['stator-plug', 3, 4],
    'pickup-inner': ['stator-plug', 5, 6],
    'coil-outer': ['coil-plug-outer', 1, 2],
    'coil-inner': ['coil-plug-inner', 1, 2],
    'stop-switch': ['stop-switch-plug', 1, 2],
  },
  legs: {},
  wires: {
    'wires-exciter': [
      wire('stator-plug', 1, 'igniter-plug', 1),
      wire('stator-plug', 2, 'igniter-plug', 2),
    ],
    'wires-pickup-outer': [
      wire('stator-plug', 3, 'igniter-plug', 3),
      wire('stator-plug', 4, 'igniter-plug', 4),
    ],
    'wires-pickup-inner': [
      wire('stator-plug', 5, 'igniter-plug', 5),
      wire('stator-plug', 6, 'igniter-plug', 6),
    ],
    'wires-coil-outer': [
      wire('igniter-plug', 7, 'coil-plug-outer', 1),
      wire('igniter-plug', 8, 'coil-plug-outer', 2),
    ],
    'wires-coil-inner': [
      wire('igniter-plug', 9, 'coil-plug-inner', 1),
      wire('igniter-plug', 10, 'coil-plug-inner', 2),
    ],
    'wires-stop': [wire('stop-plug', 1, 'stop-switch-plug', 1)],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 11]],
    'stop-ground': [['stop-switch-plug', 2]],
  },
  joints: {},
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
          ['igniter-plug', 4],
        ],
        [
          ['igniter-plug', 5],
          ['igniter-plug', 6],
        ],
      ],
      outputs: [
        [
          ['igniter-plug', 7],
          ['igniter-plug', 8],
        ],
        [
          ['igniter-plug', 9],
          ['igniter-plug', 10],
        ],
      ],
      ground: ['igniter-plug', 11],
      stop: ['stop-plug', 1],
    },
  ],
  apart: [
    ...['flywheel', 'flywheel-key', 'flooding', 'fuel', 'fuel-feed', 'carburettor'],
    ...['igniter-outer', 'igniter-inner'],
    ...cylinders.flatMap((n) => [`lead-${n}`, `cap-${n}`, `plug-${n}`, `cylinder-${n}`]),
  ],
  ropeStarter: 'recoil-starter',
  electricStart: false,
}
