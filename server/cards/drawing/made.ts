import { setImmediate } from 'node:timers/promises'
import type { Outline } from '../../diagnosis/outline/outline.ts'
import type { Steps } from '../../diagnosis/testability/steps.ts'
import { latestOf } from '../../jobs/measuring/latest.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { cardOutline } from './making.ts'
import type { CardTools } from './tools.ts'

/** Outlines by case and tools; knowledge never changes while the server runs. */
const kept = latestOf<Case, Promise<Outline>>(8)

/**
 * The outline of a card, drawn once and kept: a step, then whatever came in meanwhile, then the next step. Who asks
 * for a card that is being drawn waits for the same one.
 */
export function madeOutline(knowledge: Knowledge, kase: Case, tools: CardTools): Promise<Outline> {
  return kept(kase, tools.id, () => betweenRequests(cardOutline(knowledge, kase, tools)))
}

async function betweenRequests<T>(steps: Steps<T>): Promise<T> {
  for (;;) {
    await setImmediate()
    const { done, value } = steps.next()
    if (done) return value
  }
}
