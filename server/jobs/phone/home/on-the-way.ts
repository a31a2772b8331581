import { lastSaid } from '../../record/repairs.ts'
import type { Standing } from '../../standing/standing.ts'

/** The way by which they got going, as long as nothing was taken since: they have not rung again. */
export function onTheWay(job: Standing['job']): string | undefined {
  const last = lastSaid(job)
  return last?.kind === 'tried' && last.helped ? last.way : undefined
}
