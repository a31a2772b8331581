import { complaintsFor } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { openApp } from './app.ts'
import { workJob } from './job.ts'
import type { Place } from './opening.ts'
import type { JobRecord } from './record.ts'
import type { Climate } from './world/draw.ts'

/** So many jobs, over all cases in turn, by bench and trailside. */
export interface Fleet {
  readonly jobs: number
  readonly seed: number
  readonly climate: Climate
  /** The seed of one job, to work it alone. */
  readonly only?: number
  /** Only cases of this machine, or of this complaint. */
  readonly machine?: string
  readonly complaint?: string
}

/** @param done is told of each job as it ends */
export async function runFleet(
  fleet: Fleet,
  done: (record: JobRecord) => void = () => {},
): Promise<readonly JobRecord[]> {
  const knowledge = shippedKnowledge()
  const cases = casesInTurn(knowledge)
  const { http, close } = await openApp(knowledge)
  const records: JobRecord[] = []
  try {
    for (const seed of seedsOf(fleet, cases)) {
      const [machine, complaint] = cases[seed % cases.length]!
      const kase = caseFor(knowledge, machine, complaint)
      const place = placeOf(seed, cases.length)
      const record = await workJob(http, knowledge, kase, seed, fleet.climate, place)
      records.push(record)
      done(record)
    }
  } finally {
    await close()
  }
  return records
}

type CaseName = readonly [machine: string, complaint: string]

/** Every complaint on one machine, then on the next one that can have it: few jobs meet many complaints. */
function casesInTurn(knowledge: Knowledge): readonly CaseName[] {
  const rounds = new Map<string, number>()
  const turn = (complaint: string) => {
    const round = rounds.get(complaint) ?? 0
    rounds.set(complaint, round + 1)
    return round
  }
  return [...knowledge.machines.keys()]
    .flatMap((machine) =>
      complaintsFor(knowledge, machine).map(({ id }) => ({
        name: [machine, id] as const,
        round: turn(id),
      })),
    )
    .sort((a, b) => a.round - b.round)
    .map(({ name }) => name)
}

/** One job of three is worked trailside, and a case that comes round again at the next place. */
const placeOf = (seed: number, cases: number): Place =>
  (seed + Math.floor(seed / cases)) % 3 === 2 ? 'trailside' : 'bench'

/**
 * A job's seed names its case and its place as well, so that the seed alone brings it back. A fleet begins with the
 * first case.
 *
 * @throws Error if no case is of the machine and the complaint asked for
 */
function seedsOf(
  { jobs, seed, only, ...wanted }: Fleet,
  cases: readonly CaseName[],
): readonly number[] {
  if (only !== undefined) return [only]
  const isWanted = ([machine, complaint]: CaseName) =>
    machine === (wanted.machine ?? machine) && complaint === (wanted.complaint ?? complaint)
  if (!cases.some(isWanted)) throw new Error('No complaint of that name fits such a machine.')
  const found: number[] = []
  for (let next = seed * 1000 * cases.length; found.length < jobs; next += 1) {
    if (isWanted(cases[next % cases.length]!)) found.push(next)
  }
  return found
}
