import view from '@fastify/view'
import { Eta } from 'eta'
import type { FastifyInstance } from 'fastify'
import type { AssetAddresses } from './assets.ts'
import { viewsFolder } from './folders.ts'

export interface ViewOptions {
  readonly assets: AssetAddresses
  /** May be empty. */
  readonly currency: string
  /** Templates are read anew for each page, and their mistakes are shown with file and line. */
  readonly fresh: boolean
}

/** Every template finds `it.assets` and `it.currency`, whatever else its page gives it. */
export function useViews(app: FastifyInstance, { assets, currency, fresh }: ViewOptions): void {
  app.register(view, {
    engine: { eta: fresh ? knowingItsPaths(new Eta({ debug: true })) : kept },
    root: viewsFolder,
    production: !fresh,
    defaultContext: { assets, currency },
  })
}

/** Templates that stay as they are, compiled once however many apps there are. */
const kept = knowingItsPaths(new Eta())

/**
 * Eta keeps the paths it has resolved under a name that it builds anew for each include, which was a
 * quarter of rendering a page.
 */
function knowingItsPaths(eta: Eta): Eta {
  const resolve = eta.resolvePath?.bind(eta)
  if (resolve === undefined) return eta
  const knownFrom = new Map<string | undefined, Map<string, string>>()
  eta.resolvePath = (template, options) => {
    const known = knownFrom.get(options?.filepath) ?? new Map<string, string>()
    const path = known.get(template) ?? resolve(template, options)
    knownFrom.set(options?.filepath, known.set(template, path))
    return path
  }
  return eta
}
