import type { FastifyInstance } from 'fastify'
import { meterRoutes } from './meter/routes.ts'
import { zeroRoutes } from './meter/zero-routes.ts'
import { listRoutes } from './opening/list-routes.ts'
import { openRoutes } from './opening/open-routes.ts'
import { jobRoutes } from './page/job-routes.ts'
import { repairRoutes } from './page/repair-routes.ts'
import { standsRoutes } from './page/stands-routes.ts'
import type { JobParts } from './record/parts.ts'

/** Everything under `/` that is about jobs. */
export async function jobsArea(app: FastifyInstance, parts: JobParts): Promise<void> {
  await listRoutes(app, parts)
  await openRoutes(app, parts)
  await meterRoutes(app, parts)
  await zeroRoutes(app, parts)
  await repairRoutes(app, parts)
  await standsRoutes(app, parts)
  await jobRoutes(app, parts)
}
