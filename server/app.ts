import compress from '@fastify/compress'
import cookie from '@fastify/cookie'
import formbody from '@fastify/formbody'
import fastify, { type FastifyInstance, type FastifyServerOptions } from 'fastify'
import { cardsArea } from './cards/routes.ts'
import { healthArea } from './health/routes.ts'
import { jobStore } from './jobs/record/job-store.ts'
import type { JobParts } from './jobs/record/parts.ts'
import { jobsArea } from './jobs/routes.ts'
import { summaryOf } from './jobs/standing/summary.ts'
import { fieldWords } from './jobs/words/field-words.ts'
import type { Knowledge } from './knowledge/knowledge.ts'
import { learningArea } from './learning/routes.ts'
import { roundsIn } from './practice/record/rounds.ts'
import { practiceArea } from './practice/routes.ts'
import { ratesArea } from './rates/routes.ts'
import { sheetsArea } from './sheets/routes.ts'
import type { Store } from './store/open.ts'
import { textOfTrouble } from './trouble-text.ts'
import { addressesOf, loadAssets } from './web/assets.ts'
import { routeUnreadable, useErrorPages } from './web/errors.ts'
import { lines, type Patience, usualPatience } from './web/lines.ts'
import { otherMethods } from './web/other-methods.ts'
import { useSecurity } from './web/security.ts'
import { staticFiles } from './web/static-files.ts'
import { useViews } from './web/views.ts'

/** What the app is built from. */
export interface AppParts {
  readonly knowledge: Knowledge
  /** Closed by whoever opened it, after the app. */
  readonly store: Store
  readonly now?: () => Date
  /** Names that it answers to beside `localhost` and IP addresses, as `hostName` returns them. */
  readonly names?: readonly string[]
  /** What a price is in that says nothing of it, as `settingsFrom` returns it. */
  readonly currency?: string
  readonly patience?: Patience
  /** Left out: nothing is logged. */
  readonly logger?: FastifyServerOptions['logger']
  /** Templates are read anew for each page: for those who work on them. */
  readonly freshViews?: boolean
}

/** Builds the whole app without listening. */
export function buildApp(parts: AppParts): FastifyInstance {
  const { knowledge, store, now = () => new Date(), names = [], logger = false } = parts
  const { patience = usualPatience, currency = '', freshViews = false } = parts
  const app: FastifyInstance = fastify({
    logger,
    // Room for a field that somebody pasted a whole manual into: its own rule then says so, and what was typed stays in it.
    bodyLimit: 1024 * 1024,
    ...lines(patience),
    routerOptions: { ignoreTrailingSlash: true },
    frameworkErrors: (_error, request, reply) => routeUnreadable(app, request, reply),
    schemaController: { compilersFactory: withoutSchemas },
  })
  // Pages post forms; nothing here takes anything else.
  app.removeAllContentTypeParsers()
  app.register(formbody)
  app.register(cookie)
  app.register(compress)
  useErrorPages(app, { textOf: textOfTrouble, fieldWords })
  const refuseOtherMethods = otherMethods(app)
  useSecurity(app, { names })
  const assets = loadAssets()
  useViews(app, { assets: addressesOf(assets), currency, fresh: freshViews })
  app.register(staticFiles, { assets })
  const jobs = jobStore(store.jobs, now, (job) => summaryOf(jobParts, job))
  const jobParts: JobParts = { knowledge, jobs, photos: store.photos, now, currency }
  app.register(jobsArea, jobParts)
  app.register(sheetsArea, { knowledge })
  app.register(cardsArea, { knowledge })
  app.register(healthArea, { knowledge })
  app.register(ratesArea, jobParts)
  app.register(learningArea, { knowledge })
  app.register(practiceArea, { knowledge, rounds: roundsIn(store.practice, now) })
  app.register(refuseOtherMethods)
  return app
}

/** Routes here read their forms themselves. What would compile schemas of routes is a tenth of a start to load. */
const withoutSchemas = { buildValidator: noSchemas, buildSerializer: noSchemas }

function noSchemas(): never {
  throw new Error('A route has a schema: read its form beside the route, as the others do.')
}
