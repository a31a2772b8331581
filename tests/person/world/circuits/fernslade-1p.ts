import type { Circuit } from '../circuit.ts'
import { wire } from './pins.ts'

/** The bracken cutter with points: every winding has one wire out, and its other end on the core. */
export const fernslade: Circuit = {
  ends: {
    coil: ['coil-plug', 1, 2],
    'stop-switch': ['stop-switch-plug', 1, 2],
    'work-lamp': ['lamp-plug', 1, 2],
  },
  grounded: {
    primary: ['magneto-plug', 1],
    points: ['magneto-plug', 1],
    condenser: ['magneto-plug', 1],
    'points-lead': ['magneto-plug', 1],
    lighting: ['magneto-plug', 2],
  },
  legs: {},
  wires: {
    'wires-primary': [wire('magneto-plug', 1, 'coil-plug', 1)],
    'wires-lighting': [wire('magneto-plug', 2, 'lamp-plug', 1)],
    'wires-stop': [wire('stop-plug', 1, 'stop-switch-plug', 1)],
  },
  grounds: {
    'coil-ground': [['coil-plug', 2]],
    'stop-ground': [['stop-switch-plug', 2]],
    'lamp-ground': [['lamp-plug', 2]],
  },
  joints: {},
  boxes: [],
  apart: ['flywheel', 'flywheel-key', 'lead', 'cap', 'plug', 'flooding', 'rear-lamp'],
  ropeStarter: 'blower-housing',
  electricStart: false,
}
