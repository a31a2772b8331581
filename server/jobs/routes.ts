import type { FastifyInstance } from 'fastify'
import { exportRoutes } from './export/routes.ts'
import { listRoutes } from './finding/list-routes.ts'
import { meterRoutes } from './meter/routes.ts'
import { zeroRoutes } from './meter/zero-routes.ts'
import { conditionsRoutes } from './opening/conditions-routes.ts'
import { openRoutes } from './opening/open-routes.ts'
import { overRoutes } from './over/routes.ts'
import { jobRoutes } from './page/job-routes.ts'
import { phoneRoutes } from './page/phone-routes.ts'
import { photoRoutes } from './page/photo-routes.ts'
import { repairRoutes } from './page/repair-routes.ts'
import { standsRoutes } from './page/stands-routes.ts'
import { paperRoutes } from './paper/routes.ts'
import type { JobParts } from './record/parts.ts'

/** Everything under `/` that is about jobs. */
export async function jobsArea(app: FastifyInstance, parts: JobParts): Promise<void> {
  keepCatchingUp(app, parts)
  await listRoutes(app, parts)
  await openRoutes(app, parts)
  await conditionsRoutes(app, parts)
  await meterRoutes(app, parts)
  await zeroRoutes(app, parts)
  await overRoutes(app, parts)
  await exportRoutes(app, parts)
  await repairRoutes(app, parts)
  await standsRoutes(app, parts)
  await phoneRoutes(app, parts)
  await paperRoutes(app, parts)
  await photoRoutes(app, parts)
  await jobRoutes(app, parts)
}

/** From the start until the app closes, which waits for the job at hand. */
function keepCatchingUp(app: FastifyInstance, { jobs }: JobParts): void {
  let over = false
  let caughtUp: Promise<void> = Promise.resolve()
  app.addHook('onReady', async () => {
    caughtUp = jobs
      .catchUp(() => over)
      .catch((error) => app.log.error({ err: error }, 'The list of jobs is not up to date'))
  })
  app.addHook('onClose', () => {
    over = true
    return caughtUp
  })
}
