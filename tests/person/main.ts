import { parseArgs } from 'node:util'
import { type Fleet, printFleet, runFleet } from './fleet.ts'
import { type Climate, climates } from './world/draw.ts'

const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    world: { type: 'string', default: climates.join() },
    job: { type: 'string' },
    say: { type: 'boolean', default: false },
  },
})

const only = values.job === undefined ? undefined : Number(values.job)
for (const climate of values.world.split(',') as Climate[]) {
  const fleet: Fleet = {
    jobs: Number(values.jobs),
    seed: Number(values.seed),
    climate,
    ...(only !== undefined && { only }),
  }
  printFleet(fleet, await runFleet(fleet), values.say)
}
