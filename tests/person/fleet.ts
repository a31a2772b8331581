import { complaintsFor } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { shippedTrees } from '../support/knowledge.ts'
import { openApp } from './app.ts'
import { workJob } from './job.ts'
import type { JobRecord } from './record.ts'
import type { Climate } from './world/draw.ts'

/** So many jobs, over all cases in turn, by bench and trailside in turn. */
export interface Fleet {
  readonly jobs: number
  readonly seed: number
  readonly climate: Climate
  /** The seed of one job, to work it alone. */
  readonly only?: number
}

export async function runFleet(fleet: Fleet): Promise<readonly JobRecord[]> {
  const knowledge = loadKnowledge(shippedTrees)
  const cases = [...knowledge.machines.keys()].flatMap((machine) =>
    complaintsFor(knowledge, machine).map(({ id }) => [machine, id] as const),
  )
  const { http, close } = await openApp(knowledge)
  const records: JobRecord[] = []
  try {
    for (const seed of seedsOf(fleet)) {
      const [machine, complaint] = cases[seed % cases.length]!
      // Cases come in turn, and each of them at both places.
      const place = Math.floor(seed / cases.length) % 3 === 2 ? 'trailside' : 'bench'
      const kase = caseFor(knowledge, machine, complaint)
      records.push(await workJob(http, knowledge, kase, seed, fleet.climate, place))
    }
  } finally {
    await close()
  }
  return records
}

/** A job's seed names its case and its place as well, so that the seed alone brings it back. */
function seedsOf({ jobs, seed, only }: Fleet): readonly number[] {
  return only !== undefined ? [only] : Array.from({ length: jobs }, (_, i) => seed * 1000 + i)
}

export { printFleet } from './print.ts'
