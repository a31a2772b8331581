import type { Circuit } from '../circuit.ts'
import { pair, twoWires, wire } from './pins.ts'

/** The ride-on whose battery feeds the spark. The fuse holder stands in for a plug. */
export const brackenway: Circuit = {
  ends: {
    pickup: ['pickup-lead-plug', 1, 2],
    coil: ['coil-plug', 1, 2],
    'seat-switch': ['seat-plug', 1, 2],
    lanyard: ['lanyard-plug', 1, 2],
    'brake-switch': ['brake-plug', 1, 2],
    'starter-relay': ['relay-plug', 1, 2],
  },
  legs: { charging: ['charge-plug', 1, 2, 3] },
  wires: {
    'wires-supply': [wire('key-plug', 2, 'igniter-plug', 1)],
    'wires-pickup': twoWires('pickup-lead-plug', 1, 'igniter-plug', 3),
    'wires-coil': twoWires('igniter-plug', 5, 'coil-plug', 1),
    'wires-run': [wire('igniter-plug', 2, 'seat-plug', 1), wire('lanyard-plug', 1, 'seat-plug', 2)],
    'wires-key': [wire('key-plug', 1, 'fuse-holder', 2)],
    'wires-start': [wire('key-plug', 3, 'brake-plug', 1), wire('relay-plug', 1, 'brake-plug', 2)],
    'wires-charging': [
      wire('charge-plug', 1, 'rectifier-plug', 1),
      wire('charge-plug', 2, 'rectifier-plug', 2),
      wire('charge-plug', 3, 'rectifier-plug', 3),
    ],
    'wires-feed': [wire('output-plug', 1, 'fuse-holder', 1)],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 7]],
    'run-ground': [['lanyard-plug', 2]],
    'relay-ground': [['relay-plug', 2]],
    'rectifier-ground': [['output-plug', 2]],
  },
  joints: {},
  inLine: { 'wires-supply': 'ignition-fuse' },
  keys: { 'key-switch': { plug: 'key-plug', feed: 1, run: 2, start: 3 } },
  boxes: [
    {
      part: 'igniter',
      inputs: [pair('igniter-plug', 1, 7), pair('igniter-plug', 3, 4)],
      outputs: [pair('igniter-plug', 5, 6)],
      ground: ['igniter-plug', 7],
      run: ['igniter-plug', 2],
    },
  ],
  apart: [
    ...['flywheel', 'flywheel-key', 'lead', 'cap', 'plug', 'flooding'],
    ...['rectifier', 'fuse', 'ignition-fuse', 'key-switch', 'battery', 'battery-lead'],
    ...['battery-ground', 'starter-lead', 'starter'],
  ],
  ropeStarter: 'fan-housing',
  electricStart: true,
  noRope: true,
}
