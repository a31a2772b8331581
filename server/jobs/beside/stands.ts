import type { Standing } from '../standing/standing.ts'
import { toPutBack } from '../standing/way/way-to.ts'
import { sentence } from '../words/sentences.ts'
import type { StandsView } from './view.ts'

/** What is apart, off or fitted now, last made first, so that one can say where it is not so. */
export function presentStands({ job, asItStands }: Standing): StandsView {
  const steps = toPutBack(asItStands)
  return {
    action: `/jobs/${job.id}/stands`,
    items: steps.map(({ setup, unsure }) => ({
      says: sentence(setup.do),
      unsure,
      setup: setup.id,
    })),
  }
}
