import { describe, expect, it } from 'vitest'
import { ground, node } from '../../../server/practice/world/node.ts'
import { ohmsBetween } from '../../../server/practice/world/solve.ts'
import { seeded } from '../../bench/random.ts'
import { shippedCases, shippedKnowledge } from '../../support/knowledge.ts'
import { asItCame, drawWorld } from './draw.ts'
import type { Effect } from './effect.ts'
import { endAt } from './net/points.ts'
import { network } from './network.ts'
import { type Now, nowAt } from './now.ts'
import type { Doing } from './site.ts'
import { add } from './standing.ts'
import { ignition } from './systems/ignition.ts'

const knowledge = shippedKnowledge()
const kase = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'fernslade-1p',
)!

/** A good machine with points but for one fault, the magneto plug apart or joined. */
function machine(
  fault: readonly [part: string, mode: string, effect: Effect] | null,
  doing: Doing = {},
  ...apart: string[]
): Now {
  const faults = fault ? [{ part: fault[0], mode: fault[1], effect: fault[2] }] : []
  const site = asItCame({ ...drawWorld(knowledge, kase, 3, '20'), faults, elsewhere: false })
  const standing = add('apart', ...apart)(site.standing)
  return nowAt({ ...site, standing, doing, random: seeded(1) })
}

const sparkOf = (now: Now, rpm = 450) => ignition(now, rpm).outputs.get('single')!.spark

const atPlug = (now: Now) => ohmsBetween(network(now), node(['magneto-plug', 1], 'own'), ground)

describe('points and condenser in the world of the literal person', () => {
  it('give a good spark at a pull, and more at speed', () => {
    expect(sparkOf(machine(null))).toBeGreaterThan(0.9)
    expect(sparkOf(machine(null), 5000)).toBeGreaterThan(1.3)
  })

  it('leave a thin spark without a condenser, and a good one with another beside it', () => {
    const open = ['condenser', 'open', { gives: 0 }] as const
    expect(sparkOf(machine(open))).toBeLessThan(0.4)
    expect(sparkOf(machine(open))).toBeGreaterThan(0.05)
    expect(sparkOf(machine(open, { besideIt: true }))).toBeGreaterThan(0.9)
  })

  it.each([
    ['points', 'closed-up', {}],
    ['points', 'stuck-open', { series: Infinity }],
    ['condenser', 'shorted', { leak: 0.5 }],
    ['points-lead', 'grounded', { leak: 0.1 }],
    ['primary', 'ground-lost', { series: Infinity }],
    ['coil-ground', 'loose', { series: Infinity }],
  ] as const)('leave no spark with %s %s', (part, mode, effect) => {
    expect(sparkOf(machine([part, mode, effect]))).toBeLessThan(0.1)
  })

  it('stop as the stop switch grounds their wire', () => {
    const now = machine(null)
    const off = { ...now.site, standing: { ...now.site.standing, stopSwitch: 'OFF' as const } }
    expect(ignition(now, 1500).stopped).toBe(false)
    expect(ignition(nowAt(off), 1500).stopped).toBe(true)
  })

  it('read as the winding while they are open, and as next to nothing while they are closed', () => {
    const open = atPlug(machine(null, { pointsOpen: true }, 'magneto-plug'))
    expect(open).toBeGreaterThan(1.1)
    expect(open).toBeLessThan(1.8)
    expect(atPlug(machine(null, {}, 'magneto-plug'))).toBeLessThan(0.2)
  })

  it('hide which of them is shorted until each is lifted off', () => {
    const shorted = ['condenser', 'shorted', { leak: 0.1 }] as const
    expect(atPlug(machine(shorted, { pointsOpen: true }, 'magneto-plug'))).toBeLessThan(0.2)
    const lifted = network(machine(shorted, { lifted: true }, 'magneto-plug'))
    expect(ohmsBetween(lifted, endAt('condenser'), ground)).toBeLessThan(0.2)
    expect(ohmsBetween(lifted, endAt('primary'), ground)).toBeGreaterThan(1.1)
    expect(ohmsBetween(lifted, endAt('points-lead'), ground)).toBe(Infinity)
  })
})
