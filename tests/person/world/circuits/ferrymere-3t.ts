import type { Circuit, Pin } from '../circuit.ts'
import { pair, twoWires, wire } from './pins.ts'

const atIgniter = (first: number) => pair('igniter-plug', first, first + 1)

const cylinders = ['top', 'middle', 'bottom']

/** The outboard with three cylinders, a pickup and a coil for each, as its sheet says it in words. */
export const ferrymere: Circuit = {
  ends: {
    exciter: ['magneto-plug', 1, 2],
    'pickup-top': ['pickup-plug', 1, 2],
    'pickup-middle': ['pickup-plug', 3, 4],
    'pickup-bottom': ['pickup-plug', 5, 6],
    'coil-top': ['coil-plug-top', 1, 2],
    'coil-middle': ['coil-plug-middle', 1, 2],
    'coil-bottom': ['coil-plug-bottom', 1, 2],
    'key-switch': ['key-plug', 1, 2],
    tether: ['tether-plug', 1, 2],
  },
  legs: { charging: ['charge-plug', 1, 2, 3] },
  wires: {
    'wires-exciter': twoWires('magneto-plug', 1, 'igniter-plug', 1),
    'wires-pickup-top': twoWires('pickup-plug', 1, 'igniter-plug', 3),
    'wires-pickup-middle': twoWires('pickup-plug', 3, 'igniter-plug', 5),
    'wires-pickup-bottom': twoWires('pickup-plug', 5, 'igniter-plug', 7),
    'wires-coil-top': twoWires('igniter-plug', 9, 'coil-plug-top', 1),
    'wires-coil-middle': twoWires('igniter-plug', 11, 'coil-plug-middle', 1),
    'wires-coil-bottom': twoWires('igniter-plug', 13, 'coil-plug-bottom', 1),
    'wires-stop': [wire('stop-plug', 1, 'key-plug', 1), wire('stop-plug', 1, 'tether-plug', 1)],
    'wires-charging': [
      ...twoWires('charge-plug', 1, 'rectifier-plug', 1),
      wire('charge-plug', 3, 'rectifier-plug', 3),
    ],
    'wires-feed': [wire('output-plug', 1, 'fuse-holder', 1)],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 15]],
    'stop-ground': [
      ['key-plug', 2],
      ['tether-plug', 2],
    ],
    'rectifier-ground': [['output-plug', 2]],
  },
  joints: { 'pickup-plug': [1, 2, 3, 4, 5, 6].map((pin): Pin => ['pickup-plug', pin]) },
  boxes: [
    {
      part: 'igniter',
      inputs: [1, 3, 5, 7].map(atIgniter),
      outputs: [9, 11, 13].map(atIgniter),
      ground: ['igniter-plug', 15],
      stop: ['stop-plug', 1],
    },
  ],
  apart: [
    ...['flywheel', 'flywheel-key', 'flooding', 'fuel', 'fuel-feed', 'carburettor'],
    ...['rectifier', 'fuse', 'battery', 'battery-lead', 'battery-ground'],
    ...['igniter', 'lead', 'cap', 'plug', 'cylinder'].flatMap((part) =>
      cylinders.map((cylinder) => `${part}-${cylinder}`),
    ),
  ],
  ropeStarter: 'recoil-starter',
  electricStart: true,
}
