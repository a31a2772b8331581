import type { Circuit } from '../circuit.ts'
import { pair, twoWires, wire } from './pins.ts'

/** The carrier with a battery, as its sheet says it in words. The fuse holder stands in for a plug. */
export const haulmoor: Circuit = {
  ends: {
    exciter: ['magneto-plug', 1, 2],
    pickup: ['magneto-plug', 3, 4],
    coil: ['coil-plug', 1, 2],
    'key-switch': ['key-plug', 1, 2],
    tether: ['tether-plug', 1, 2],
  },
  legs: { charging: ['charge-plug', 1, 2, 3] },
  wires: {
    'wires-exciter': twoWires('magneto-plug', 1, 'igniter-plug', 1),
    'wires-pickup': twoWires('magneto-plug', 3, 'igniter-plug', 3),
    'wires-coil': twoWires('igniter-plug', 5, 'coil-plug', 1),
    'wires-stop': [wire('stop-plug', 1, 'key-plug', 1), wire('stop-plug', 1, 'tether-plug', 1)],
    'wires-charging': [
      wire('charge-plug', 1, 'rectifier-plug', 1),
      wire('charge-plug', 2, 'rectifier-plug', 2),
      wire('charge-plug', 3, 'rectifier-plug', 3),
    ],
    'wires-feed': [wire('output-plug', 1, 'fuse-holder', 1)],
    'wires-sense': [wire('sense-plug', 1, 'fuse-holder', 2)],
    'wires-dash': [wire('dash-plug', 1, 'dash-fuse-holder', 1)],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 7]],
    'stop-ground': [
      ['key-plug', 2],
      ['tether-plug', 2],
    ],
    'rectifier-ground': [['output-plug', 2]],
    'dash-ground': [['dash-plug', 2]],
  },
  joints: {},
  boxes: [
    {
      part: 'igniter',
      inputs: [pair('igniter-plug', 1, 2), pair('igniter-plug', 3, 4)],
      outputs: [pair('igniter-plug', 5, 6)],
      ground: ['igniter-plug', 7],
      stop: ['stop-plug', 1],
    },
  ],
  apart: [
    ...['flywheel', 'flywheel-key', 'lead', 'cap', 'plug', 'flooding'],
    ...['cylinder', 'fuel', 'fuel-feed', 'carburettor'],
    ...['rectifier', 'fuse', 'battery', 'battery-lead', 'battery-ground'],
    ...['dash-display', 'dash-fuse'],
  ],
  ropeStarter: 'recoil-starter',
  electricStart: true,
}
