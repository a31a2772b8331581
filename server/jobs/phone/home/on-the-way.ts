import { asides } from '../../record/events.ts'
import type { Standing } from '../../standing/standing.ts'

/** The way by which they got going, as long as nothing was taken since: they have not rung again. */
export function onTheWay({ events }: Standing['job']): string | undefined {
  const last = events.findLast(({ event }) => !asides.includes(event.kind))?.event
  return last?.kind === 'tried' && last.helped ? last.way : undefined
}
