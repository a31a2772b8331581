import type { SetupCard } from '../../../knowledge/case.ts'

/** What it takes to get to a check: what is in its way goes back, and what it needs is made ready. */
export interface There {
  readonly putBack: readonly Doing[]
  readonly make: readonly Doing[]
}

interface Doing {
  readonly setup: SetupCard
}

/** Minutes to get there. */
export function minutesThere({ putBack, make }: There): number {
  return make.reduce((sum, { setup }) => sum + setup.minutes, minutesBack(putBack))
}

/** Minutes to put these back. */
export function minutesBack(steps: readonly Doing[]): number {
  return steps.reduce((sum, { setup }) => sum + (setup.undo?.minutes ?? 0), 0)
}
