import type { Home } from '../../../knowledge/schema/phone/home.ts'

export type Way = Home['ways'][string]

/**
 * The steps of a way home, parted where the engine is started: covers go on before that, and what comes after is said
 * of the way itself.
 */
export interface WaySteps {
  readonly before: readonly string[]
  /** Covers on again, where hands went below them. */
  readonly covered: readonly string[]
  /** The steps that set it for work and start it, where some do. */
  readonly start: readonly string[]
  readonly after: readonly string[]
}

/** In the words of the file, with what comes off first where hands have to go below covers. */
export function stepsOf({ do: steps, uncovers }: Way, { covers }: Home): WaySteps {
  const turned = steps.findLastIndex((step) => step.includes('{turn}'))
  const last = steps.findLastIndex((step) => step.includes('{off}'))
  // Set for work it may start: hands are done by then.
  const set = steps.findIndex((step, i) => i > last && /\{(run|start)\}/.test(step))
  const started = set < 0 ? turned : Math.min(turned, set)
  const before = started < 0 ? steps : steps.slice(0, started)
  // Nobody's hands go to a cover before it cannot start.
  const safe = before.findIndex((step) => step.includes('{off}')) + 1
  return {
    before: uncovers ? before.toSpliced(safe, 0, covers.before) : before,
    covered: uncovers ? [covers.after] : [],
    start: started < 0 ? [] : steps.slice(started, turned + 1),
    after: started < 0 ? [] : steps.slice(turned + 1),
  }
}
