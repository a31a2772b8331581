import { parseArgs } from 'node:util'
import { runFleet } from './fleet.ts'
import { printFleet, printJob } from './print.ts'
import { type Climate, climates } from './world/draw.ts'

/**
 * `npm run person`: the literal person works jobs in the three weathers and prints what came of them.
 * `--jobs 300 --seed 1 --world cold` narrows it, and so do `--machine` and `--complaint`; `--job 1017 --say` works one
 * job again, page by page.
 */
const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    world: { type: 'string', default: climates.join() },
    job: { type: 'string' },
    machine: { type: 'string' },
    complaint: { type: 'string' },
    say: { type: 'boolean', default: false },
  },
})

for (const climate of values.world.split(',') as Climate[]) {
  const fleet = {
    jobs: Number(values.jobs),
    seed: Number(values.seed),
    climate,
    ...(values.job !== undefined && { only: Number(values.job) }),
    ...(values.machine !== undefined && { machine: values.machine }),
    ...(values.complaint !== undefined && { complaint: values.complaint }),
  }
  printFleet(fleet, await runFleet(fleet, (record) => values.say && printJob(record)))
}
