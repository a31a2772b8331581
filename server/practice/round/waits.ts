import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import { longestWait, stepsBeforeItTurns } from '../../knowledge/instantiate/waits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'

/** Minutes of the round, and when the engine last turned; null where it has not. */
export interface Clock {
  readonly minutes: number
  readonly turnedAt: number | null
}

/** Before anything was done: whoever brought the machine let it stand. */
export const atRest: Clock = { minutes: 0, turnedAt: null }

/** Minutes that somebody waits before a check; what its steps wait for after they have turned it is in its own. */
export function waitFor(
  knowledge: Knowledge,
  card: CheckCard,
  needs: readonly SetupCard[],
  clock: Clock,
): number {
  const before = stepsBeforeItTurns(card.engine, card.do)
  return left(longestWait(knowledge, [...needs.map((setup) => setup.do), ...before]), clock)
}

/** Minutes that it takes to put these back, and those of them that somebody waits before that. */
export function minutesBack(
  knowledge: Knowledge,
  back: readonly SetupCard[],
  clock: Clock,
): { readonly minutes: number; readonly waited: number } {
  const ways = back.flatMap(({ undo }) => undo ?? [])
  const says = ways.map((undo) => undo.do)
  const waited = left(longestWait(knowledge, says), clock)
  return { minutes: ways.reduce((sum, { minutes }) => sum + minutes, waited), waited }
}

/** The clock after a check that took so many minutes. */
export function after(
  { minutes, turnedAt }: Clock,
  { engine, asked }: CheckCard,
  spent: number,
): Clock {
  const now = minutes + spent
  return { minutes: now, turnedAt: engine === 'stopped' || asked ? turnedAt : now }
}

/** What is left of a wait that begins when the engine last turned. */
const left = (wait: number, { minutes, turnedAt }: Clock): number =>
  turnedAt === null ? 0 : Math.max(0, wait - (minutes - turnedAt))
