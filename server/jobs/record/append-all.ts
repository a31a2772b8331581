import type { JobEvent } from './events.ts'
import type { JobStore } from './job-store.ts'

/**
 * Appends several events one after another, as long as nobody else writes in between; then the rest is left
 * out and it says `stale`.
 */
export async function appendAll(
  jobs: JobStore,
  id: number,
  version: number,
  events: readonly JobEvent[],
): Promise<'written' | 'stale'> {
  for (const [i, event] of events.entries()) {
    if ((await jobs.append(id, version + i, event)) === 'stale') return 'stale'
  }
  return 'written'
}
