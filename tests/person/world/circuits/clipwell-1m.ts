import type { Circuit } from '../circuit.ts'
import { wire } from './pins.ts'

/** The shearing rig with one ignition module and nothing else behind its flywheel. */
export const clipwell: Circuit = {
  ends: { 'stop-switch': ['stop-switch-plug', 1, 2] },
  legs: {},
  wires: {
    'wires-stop': [wire('stop-plug', 1, 'stop-switch-plug', 1)],
  },
  grounds: { 'stop-ground': [['stop-switch-plug', 2]] },
  joints: {},
  // Its ground is its own legs: no pin of it is read against metal.
  boxes: [],
  apart: [
    'flywheel',
    'flywheel-key',
    'module',
    'module-seat',
    'lead',
    'cap',
    'plug',
    'flooding',
  ].concat([...['cylinder', 'fuel', 'fuel-feed', 'carburettor']]),
  ropeStarter: 'blower-housing',
  electricStart: false,
}
