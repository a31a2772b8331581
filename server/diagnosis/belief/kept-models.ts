import type { Model } from '../model/model.ts'

/**
 * Models made of a model, each kept under its name for as long as that one is there: all pages of a job share it, since
 * much is arranged once per model.
 */
export function keptModels(): (of: Model, name: string, make: () => Model) => Model {
  const kept = new WeakMap<Model, Map<string, Model>>()
  return (of, name, make) => {
    const models = kept.get(of) ?? new Map<string, Model>()
    kept.set(of, models)
    const known = models.get(name) ?? make()
    models.set(name, known)
    return known
  }
}
