import type { Circuit } from '../circuit.ts'
import { pair, twoWires, wire } from './pins.ts'

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
    'wires-exciter': twoWires('stator-plug', 1, 'igniter-plug', 1),
    'wires-pickup-outer': twoWires('stator-plug', 3, 'igniter-plug', 3),
    'wires-pickup-inner': twoWires('stator-plug', 5, 'igniter-plug', 5),
    'wires-coil-outer': twoWires('igniter-plug', 7, 'coil-plug-outer', 1),
    'wires-coil-inner': twoWires('igniter-plug', 9, 'coil-plug-inner', 1),
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
      inputs: [pair('igniter-plug', 1, 2), pair('igniter-plug', 3, 4), pair('igniter-plug', 5, 6)],
      outputs: [pair('igniter-plug', 7, 8), pair('igniter-plug', 9, 10)],
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
