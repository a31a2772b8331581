import { describe, expect, it } from 'vitest'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { spokenAgainst } from '../../../server/diagnosis/verdict/spoken-against.ts'
import { saw } from '../../support/tables.ts'

const states = { none: 0.3, winding: 0.3, lead: 0.2, coil: 0.1995, cap: 0.0005 }

/** Chance of `bad` under each of the states, in their order. */
const rows = {
  breath: [0.5, 0.05, 0.05, 0.06, 0.05],
  ohms: [0.05, 0.9, 0.05, 0.05, 0.05],
  // Only what hardly anybody has makes it likelier.
  odd: [0.5, 0.05, 0.05, 0.05, 0.9],
  spark: [0.9, 0.1, 0.6, 0.1, 0.1],
}

const names = Object.keys(states)
const model: Model = {
  tree: {
    top: 'top',
    gates: new Map([
      ['top', { kind: 'or', inputs: ['fed', 'coil', 'cap'] }],
      ['fed', { kind: 'or', inputs: ['winding', 'lead'] }],
    ]),
  },
  cutSets: names.map((name) => {
    const faults = name === 'none' ? [] : [name]
    return { faults, parts: faults, prior: states[name as keyof typeof states] }
  }),
  checks: Object.entries(rows).map(([id, bad]) => ({
    ...{ id, minutes: 1, setups: [], outcomes: ['bad', 'good'] },
    chances: bad.map((chance) => [chance, 1 - chance]),
  })),
}

const branches = ['top', 'fed', 'winding', 'lead', 'coil', 'cap']
const against = (check: string, outcome: string) => {
  const isAgainst = spokenAgainst(model, [saw(model, check, outcome)])
  return branches.filter((branch) => isAgainst(check, branch))
}

describe('a reading speaks against a branch', () => {
  it('where something else in the tree makes it twice as likely', () => {
    expect(against('ohms', 'bad')).toEqual(['lead', 'coil', 'cap'])
    // Of the gate over both, 0.3 · 0.1 and 0.2 · 0.95 over 0.5: 0.44 beside 0.95.
    expect(against('ohms', 'good')).toEqual(['fed', 'winding'])
  })

  it('that is not below it: a gate is not cleared by what one of its faults explains', () => {
    // 0.3 · 0.1 and 0.2 · 0.6 over 0.5: 0.3 beside 0.1.
    expect(against('spark', 'bad')).toEqual(['winding', 'coil', 'cap'])
  })

  it('but against none where only a cause outside the tree makes it likelier', () => {
    expect(against('breath', 'bad')).toEqual([])
  })

  it('nor where only what hardly anybody has does', () => {
    expect(against('odd', 'bad')).toEqual([])
  })

  it('by what was believed before it', () => {
    const evidence = [saw(model, 'spark', 'bad'), saw(model, 'ohms', 'good')]
    const isAgainst = spokenAgainst(model, evidence)
    // The lead was the likelier by then, and what is left of the gate.
    expect(branches.filter((branch) => isAgainst('ohms', branch))).toEqual(['winding'])
  })
})
