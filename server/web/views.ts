import view from '@fastify/view'
import { Eta } from 'eta'
import type { FastifyInstance } from 'fastify'
import type { AssetAddresses } from './assets.ts'
import { viewsFolder } from './folders.ts'

export interface ViewOptions {
  readonly assets: AssetAddresses
  /** Templates are read anew for each page, and their mistakes are shown with file and line. */
  readonly fresh: boolean
}

/** Every template finds `it.assets`, whatever else its page gives it. */
export function useViews(app: FastifyInstance, { assets, fresh }: ViewOptions): void {
  app.register(view, {
    engine: { eta: new Eta({ debug: fresh }) },
    root: viewsFolder,
    production: !fresh,
    defaultContext: { assets },
  })
}
