import type { Case } from '../../server/knowledge/case.ts'
import { faultOf, type HiddenFault } from '../support/hidden-fault.ts'
import { shippedCases } from '../support/knowledge.ts'
import { print } from './budgets.ts'
import { openedJob, type Posting, postings } from './one-user.ts'
import { type BenchServer, startedScript } from './server.ts'

/** So often everything is done: once to warm the server up, as the first hour of a day would, and then to count. */
const rounds = 3

/**
 * What it costs to post a reading and have the new page, in CPU of the server: over all shipped cases,
 * several faults of each, from the first check to the verdict; beside what the least would cost that a
 * server could do for a page of that size.
 */
export async function printPosting(server: BenchServer): Promise<void> {
  const walks = shippedCases().flatMap((kase) => faultsOf(kase).map((fault) => ({ kase, fault })))
  const counted: Posting[] = []
  let cpu = 0
  for (let round = 0; round < rounds; round += 1) {
    for (const { kase, fault } of walks) {
      const job = await openedJob(server.address, kase)
      const before = server.cpu()
      const made = await postings(job, fault)
      if (round === 0) continue
      cpu += server.cpu() - before
      counted.push(...made)
    }
  }
  const milliseconds = (1000 * cpu) / counted.length
  const bytes = counted.reduce((sum, each) => sum + each.bytes, 0) / counted.length
  const bare = await bareMilliseconds(Math.round(bytes), counted.length)
  print(`posting to the new page, CPU, mean of ${counted.length}`, milliseconds, 'ms')
  print(`a bare route, one row, ${Math.round(bytes / 1000)} kB of page`, bare, 'ms')
  print('the bare route over ours', bare / milliseconds, '', { atLeast: 0.4 })
  const times = counted.map((each) => each.milliseconds).sort((a, b) => a - b)
  print('posting to the new page as one waits, median', times[times.length >> 1]!, 'ms')
  print('the same, 95th percentile', times[Math.floor(times.length * 0.95)]!, 'ms')
}

/** Three single faults of a case: the first, one in the middle, the last. */
function faultsOf(kase: Case): HiddenFault[] {
  const single = kase.model.cutSets.flatMap(({ faults }, c) => (faults.length === 1 ? [c] : []))
  const some = new Set([single[0]!, single[single.length >> 1]!, single.at(-1)!])
  return [...some].map((c) => faultOf(kase, c))
}

/** CPU of one post to the bare server. */
async function bareMilliseconds(bytes: number, count: number): Promise<number> {
  const bare = await startedScript('--import', 'tsx', 'tests/bench/bare-server.ts', String(bytes))
  const post = async (times: number) => {
    for (let i = 0; i < times; i += 1) {
      const body = new URLSearchParams({
        version: String(i),
        check: 'a.check',
        typed: '365 365 365',
      })
      const headers = { 'accept-encoding': 'identity' }
      await (await fetch(`${bare.address}/rows`, { method: 'POST', body, headers })).text()
    }
  }
  try {
    await post(500)
    const before = bare.cpu()
    await post(count)
    return (1000 * (bare.cpu() - before)) / count
  } finally {
    bare.stop()
  }
}
