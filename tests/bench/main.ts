import { setTimeout } from 'node:timers/promises'
import { firstVisit } from './first-visit.ts'
import { stepMilliseconds } from './growth.ts'
import { printLargeTrees } from './large-trees.ts'
import { openedJob, postings } from './one-user.ts'
import { printOptimality } from './optimality.ts'
import { printFleet } from './print-fleet.ts'
import { startedServer } from './server.ts'

/** The budgets, each with what was measured now. Times depend on the machine; look at several runs. */
const server = await startedServer()
try {
  print('from npm start to listening', server.startSeconds, 's', 2)
  await setTimeout(3000)
  print('memory at rest', server.memory(), 'MB', 150)

  const visit = await firstVisit(server.address)
  print('first visit, compressed, all that it loads', visit.all / 1000, 'kB', 60)

  const job = await openedJob(server.address)
  const check = await firstVisit(job)
  print('first visit straight to a job', check.all / 1000, 'kB', 60)

  // The first postings warm the server up, as the first of a day would.
  await postings(job)
  const times: number[] = []
  while (times.length < 200) times.push(...(await postings(await openedJob(server.address))))
  times.sort((a, b) => a - b)
  print(`posting to the new page, median of ${times.length}`, times[times.length >> 1]!, 'ms')
  print('the same, 95th percentile', times[Math.floor(times.length * 0.95)]!, 'ms', 30)
  print('memory after that', server.memory(), 'MB')
} finally {
  server.stop()
}

for (const [cutSets, checks] of [
  [500, 250],
  [1000, 500],
  [2000, 1000],
] as const) {
  const budget = cutSets === 1000 ? 20 : undefined
  print(
    `next check, ${cutSets} cut sets × ${checks} checks`,
    stepMilliseconds(cutSets, checks),
    'ms',
    budget,
  )
}

printOptimality()
printLargeTrees()
printFleet(40, 7, [5, 21])

function print(what: string, value: number, unit: string, budget?: number): void {
  const verdict =
    budget === undefined ? '' : `  budget ${budget} ${unit}: ${value < budget ? 'kept' : 'MISSED'}`
  console.log(`${what.padEnd(48)} ${value.toFixed(2).padStart(8)} ${unit}${verdict}`)
}
