import { setTimeout } from 'node:timers/promises'
import { shippedCases } from '../support/knowledge.ts'
import { print, sumUp } from './budgets.ts'
import { firstVisit } from './first-visit.ts'
import { printLargeTrees } from './large-trees.ts'
import { openedJob } from './one-user.ts'
import { printOptimality } from './optimality.ts'
import { printPosting } from './posting.ts'
import { printFleet } from './print-fleet.ts'
import { printWorlds } from './print-worlds.ts'
import { printStarts } from './starts.ts'
import { printSteps } from './steps.ts'

/**
 * The budgets, each with what was measured now. Where they are about speed they are ratios within this
 * run, or a busy machine would miss them; seconds are printed beside them to be read, not to be kept.
 * Ends with 1 where a budget is missed.
 */
const server = await printStarts()
try {
  await setTimeout(3000)
  print('memory at rest', server.memory(), 'MB', { atMost: 150 })

  const front = await firstVisit(server.address)
  print('first visit, compressed, all that it loads', front.all / 1000, 'kB', { atMost: 60 })
  const { address } = await openedJob(server.address, shippedCases()[0]!)
  const job = await firstVisit(address)
  print('first visit straight to a job', job.all / 1000, 'kB', { atMost: 60 })

  await printPosting(server)
  print('memory after that', server.memory(), 'MB')
} finally {
  server.stop()
}

printSteps()
printOptimality()
printLargeTrees()
printFleet(40, 7, [5, 21])
printWorlds(30, 7)
sumUp()
