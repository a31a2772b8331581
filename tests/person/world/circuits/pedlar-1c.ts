import type { Circuit } from '../circuit.ts'
import { pair, twoWires, wire } from './pins.ts'

/** The carrier with a pull start and a carburettor, as its sheet says it in words. */
export const pedlar: Circuit = {
  ends: {
    exciter: ['magneto-plug', 1, 2],
    pickup: ['magneto-plug', 3, 4],
    lighting: ['magneto-plug', 5, 6],
    coil: ['coil-plug', 1, 2],
    'stop-switch': ['stop-switch-plug', 1, 2],
    tether: ['tether-plug', 1, 2],
    'lamp-switch': ['lamp-switch-plug', 1, 2],
    'work-lamp': ['work-lamp-plug', 1, 2],
  },
  legs: {},
  wires: {
    'wires-exciter': twoWires('magneto-plug', 1, 'igniter-plug', 1),
    'wires-pickup': twoWires('magneto-plug', 3, 'igniter-plug', 3),
    'wires-coil': twoWires('igniter-plug', 5, 'coil-plug', 1),
    'wires-stop': [
      wire('stop-plug', 1, 'stop-switch-plug', 1),
      wire('stop-plug', 1, 'tether-plug', 1),
    ],
    'wires-lighting': twoWires('magneto-plug', 5, 'regulator-plug', 1),
    'wires-lamps': [
      wire('regulator-plug', 3, 'lamp-switch-plug', 1),
      wire('lamp-switch-plug', 2, 'work-lamp-plug', 1),
    ],
    'wires-meter': [wire('regulator-plug', 3, 'meter-plug', 1)],
  },
  grounds: {
    'igniter-ground': [['igniter-plug', 7]],
    'stop-ground': [
      ['stop-switch-plug', 2],
      ['tether-plug', 2],
    ],
    'regulator-ground': [['regulator-plug', 4]],
    'lamp-ground': [['work-lamp-plug', 2]],
    'meter-ground': [['meter-plug', 2]],
  },
  joints: { 'regulator-pin': [['regulator-plug', 4]] },
  boxes: [
    {
      part: 'igniter',
      inputs: [pair('igniter-plug', 1, 2), pair('igniter-plug', 3, 4)],
      outputs: [pair('igniter-plug', 5, 6)],
      ground: ['igniter-plug', 7],
      stop: ['stop-plug', 1],
    },
  ],
  apart: ['flywheel', 'flywheel-key', 'lead', 'cap', 'plug', 'flooding', 'regulator'].concat([
    'instrument-lamp',
    'hour-meter',
    ...['cylinder', 'fuel', 'fuel-feed', 'carburettor'],
  ]),
  ropeStarter: 'recoil-starter',
  electricStart: false,
}
