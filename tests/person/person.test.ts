import { beforeAll, describe, expect, it } from 'vitest'
import { shippedKnowledge } from '../support/knowledge.ts'
import { runFleet } from './fleet.ts'
import type { IncidentKind, JobRecord } from './record.ts'

const complaints = shippedKnowledge().complaints.size

/**
 * A job of each complaint in mixed weather, worked over HTTP by somebody who does what each page says and
 * nothing else. `npm run person` works as many as one likes, and prints what the goals are measured by.
 */
describe('the literal person', () => {
  let records: readonly JobRecord[]
  beforeAll(async () => {
    records = await runFleet({ jobs: complaints, seed: 1, climate: 'mixed' })
  }, 300_000)

  const share = (what: (record: JobRecord) => boolean) =>
    records.filter(what).length / records.length
  const incidents = (...kinds: IncidentKind[]) =>
    records.flatMap((record) => record.incidents.filter(({ kind }) => kinds.includes(kind)))

  it('comes to an end with every job, over all complaints and at both places', () => {
    expect(new Set(records.map(({ complaint }) => complaint)).size).toBe(complaints)
    expect(new Set(records.map(({ place }) => place)).size).toBe(2)
    expect(records.filter(({ end }) => end === 'gave up')).toEqual([])
    expect(records.every(({ checks }) => checks > 0)).toBe(true)
  })

  it('is led to the right part in most jobs', () => {
    expect(share(({ outcome }) => outcome === 'right')).toBeGreaterThan(0.6)
    expect(share(({ outcome }) => outcome === 'wrong')).toBeLessThan(0.25)
  })

  it('is never asked to crank or run it with the stop wire off, or a plug apart for nothing', () => {
    expect(incidents('stop wire off', 'plug apart')).toEqual([])
  })

  it('finds its way to every check open', () => {
    expect(incidents('barred', 'own way barred', 'asked in vain')).toEqual([])
  })

  it('meets the same world again with the same seed', async () => {
    const [again] = await runFleet({ jobs: 1, seed: 1, climate: 'mixed', only: records[3]!.seed })
    expect(again).toEqual(records[3])
  })
})
