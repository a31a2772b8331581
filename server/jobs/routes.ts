import type { FastifyInstance } from 'fastify'
import { instrumentRoutes } from './instrument-routes.ts'
import { jobRoutes } from './job-routes.ts'
import { listRoutes } from './list-routes.ts'
import { openRoutes } from './open-routes.ts'
import type { JobParts } from './parts.ts'
import { repairRoutes } from './repair-routes.ts'

/** Everything under `/` that is about jobs. */
export async function jobsArea(app: FastifyInstance, parts: JobParts): Promise<void> {
  await listRoutes(app, parts)
  await openRoutes(app, parts)
  await instrumentRoutes(app, parts)
  await repairRoutes(app, parts)
  await jobRoutes(app, parts)
}
