import { describe, expect, it } from 'vitest'
import { wiresOf } from '../../server/knowledge/lint/doubts/wires.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const machine = shippedKnowledge().machines.get('pedlar-1c')!
const part = (id: string) => machine.parts.find((each) => each.id === id)!
const ends = (here: string, there: string) =>
  [here, there].map((end) => ({ plug: end.split(' ')[0], pin: end.split(' ')[1] }))

describe('the wires of a part', () => {
  const coilWires = [ends('igniter-plug 5', 'coil-plug 1'), ends('igniter-plug 6', 'coil-plug 2')]

  it('are told by the words of where it is touched', () => {
    expect(wiresOf(part('wires-coil'), machine)).toEqual(coilWires)
  })

  it('are told by what is read through it, where those words name no pins', () => {
    const silent = { ...part('wires-coil'), reach: [] }
    expect(wiresOf(silent, machine)).toEqual(coilWires)
  })

  it('leave out what is read to ground, or through another part that may change the colour', () => {
    expect(wiresOf(part('wires-stop'), machine)).toEqual([
      ends('stop-plug 1', 'stop-switch-plug 1'),
    ])
    expect(wiresOf(part('wires-lamps'), machine)).toEqual([])
  })
})
