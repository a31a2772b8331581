import type { Case } from '../../server/knowledge/case.ts'
import { faultOf, type HiddenFault } from '../support/hidden-fault.ts'
import { shippedCases } from '../support/knowledge.ts'
import { print } from './budgets.ts'
import { openedJob, type Posting, postings } from './one-user.ts'
import { type BenchServer, startedScript } from './server.ts'

/** So often every walk is made after one round that warms the servers up, as the first hour of a day would. */
const rounds = 2

interface Walk {
  readonly kase: Case
  readonly fault: HiddenFault
}

/**
 * What it costs to post a reading and have the new page, in CPU of the server: over all shipped cases,
 * several faults of each, from the first check to the verdict; beside what the least would cost that a
 * server could do for a page of that size.
 */
export async function printPosting(server: BenchServer): Promise<void> {
  const walks = shippedCases().flatMap((kase) => faultsOf(kase).map((fault) => ({ kase, fault })))
  const warm: Posting[] = []
  for (const walk of walks) warm.push(...(await walked(server, walk)).made)
  const bytes = Math.round(warm.reduce((sum, each) => sum + each.bytes, 0) / warm.length)
  const bare = await startedScript('--import', 'tsx', 'tests/bench/bare-server.ts', String(bytes))
  try {
    await postedBare(bare, warm.length)
    await printBesideBare(server, bare, walks, bytes)
  } finally {
    bare.stop()
  }
}

/** By turns, walk by walk, so that whatever else the machine does slows both down alike. */
async function printBesideBare(
  server: BenchServer,
  bare: BenchServer,
  walks: readonly Walk[],
  bytes: number,
): Promise<void> {
  const times: number[] = []
  const cpu = { ours: 0, bare: 0 }
  for (const walk of new Array<readonly Walk[]>(rounds).fill(walks).flat()) {
    const { made, seconds } = await walked(server, walk)
    cpu.ours += seconds
    cpu.bare += await postedBare(bare, made.length)
    times.push(...made.map((each) => each.milliseconds))
  }
  const count = times.length
  times.sort((a, b) => a - b)
  print(`posting to the new page, CPU, mean of ${count}`, (1000 * cpu.ours) / count, 'ms')
  print(`a bare route, one row, ${Math.round(bytes / 1000)} kB`, (1000 * cpu.bare) / count, 'ms')
  print('the bare route over ours', cpu.bare / cpu.ours, '', { atLeast: 0.4 })
  print('posting to the new page as one waits, median', times[count >> 1]!, 'ms')
  print('the same, 95th percentile', times[Math.floor(count * 0.95)]!, 'ms')
}

/** Three single faults of a case: the first, one in the middle, the last. */
function faultsOf(kase: Case): HiddenFault[] {
  const single = kase.model.cutSets.flatMap(({ faults }, c) => (faults.length === 1 ? [c] : []))
  const some = new Set([single[0]!, single[single.length >> 1]!, single.at(-1)!])
  return [...some].map((c) => faultOf(kase, c))
}

/** A job from its first reading to the verdict, and the CPU seconds of the server for it. */
async function walked(server: BenchServer, { kase, fault }: Walk) {
  const job = await openedJob(server.address, kase)
  const before = server.cpu()
  const made = await postings(job, fault)
  return { made, seconds: server.cpu() - before }
}

/** CPU seconds of the bare server for that many posts. */
async function postedBare(bare: BenchServer, times: number): Promise<number> {
  const before = bare.cpu()
  for (let version = 0; version < times; version += 1) {
    const body = new URLSearchParams({
      version: String(version),
      check: 'a.check',
      typed: '365 365 365',
    })
    const headers = { 'accept-encoding': 'identity' }
    await (await fetch(`${bare.address}/rows`, { method: 'POST', body, headers })).text()
  }
  return bare.cpu() - before
}
