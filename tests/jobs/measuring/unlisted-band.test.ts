import { describe, expect, it } from 'vitest'
import { chanceThatFailed, shippedJob } from '../../support/shipped-job.ts'

const atIgniter = ['left', 'right'].map((side) => `winding-resistance.pickup-${side}.igniter-plug`)

describe('a reading in a band that no row lists', () => {
  it.each(['no-spark', 'cuts-out'])('of %s keeps the part that is wet', (complaint) => {
    const job = { machine: 'larkfell-2i', complaint }
    const before = chanceThatFailed(shippedJob(job, {}), 'pickup-plug')
    // Water between the pins of both pickups: 5.8 Ω, where wet grime is said to add ohms or take a few away.
    for (const count of [1, 2]) {
      const readings = Object.fromEntries(atIgniter.slice(0, count).map((check) => [check, '5.8']))
      expect(chanceThatFailed(shippedJob(job, readings), 'pickup-plug')).toBeGreaterThan(before / 2)
    }
  })
})

describe('a cap that reads half a megohm', () => {
  it('is as burnt where the second touch differs as where it is the same', () => {
    const job = { machine: 'larkfell-2i', complaint: 'one-cylinder-dead' }
    const chance = (typed: string) => {
      const standing = shippedJob(job, { 'cap-resistance.cap-left': typed })
      return chanceThatFailed(standing, 'cap-left')
    }
    expect(chance('400k 600k')).toBeGreaterThan(0.55)
    expect(chance('400k 600k')).toBeCloseTo(chance('500k 500k'), 1)
  })
})
