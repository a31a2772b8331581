import type { FastifyInstance } from 'fastify'
import { afterRoutes } from './after/routes.ts'
import { openingRoutes } from './opening/routes.ts'
import { roundRoutes } from './page/routes.ts'
import { progressRoutes } from './progress/routes.ts'
import type { PracticeParts } from './record/parts.ts'

/** The practice bench: a fault is hidden, somebody looks for it, and sees afterwards how the tool would have. */
export async function practiceArea(app: FastifyInstance, parts: PracticeParts): Promise<void> {
  await openingRoutes(app, parts)
  await roundRoutes(app, parts)
  await afterRoutes(app, parts)
  await progressRoutes(app, parts)
}
