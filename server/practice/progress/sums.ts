import type { Result } from '../record/events.ts'

/** What somebody's rounds of one kind of part come to. */
export interface Sum {
  readonly partKind: string
  readonly rounds: number
  readonly right: number
  readonly minutes: number
  readonly toolMinutes: number
  /** Complaints of the rounds that were not right, latest first. */
  readonly missed: readonly string[]
}

/** By the kind of part that had failed, those that go worst first. */
export function sumsOf(results: readonly Result[]): readonly Sum[] {
  const kinds = [...new Set(results.map(({ partKind }) => partKind))]
  return kinds
    .map((partKind): Sum => {
      const own = results.filter((result) => result.partKind === partKind)
      return {
        partKind,
        rounds: own.length,
        right: own.filter(({ right }) => right).length,
        minutes: total(own, ({ minutes }) => minutes),
        // Where it missed it, nobody was quicker or slower than it.
        toolMinutes: total(own, ({ toolMinutes, toolMissed, minutes }) =>
          toolMissed ? minutes : toolMinutes,
        ),
        missed: own.filter(({ right }) => !right).map(({ complaint }) => complaint),
      }
    })
    .sort((a, b) => need(b) - need(a) || b.rounds - a.rounds)
}

/** How much a kind needs practice: the share that was not right, and how many times the tool's minutes it took. */
export const need = ({ rounds, right, minutes, toolMinutes }: Sum): number =>
  1 - right / rounds + 0.1 * Math.min(5, minutes / Math.max(toolMinutes, 1))

/** What to practise next: the kind that goes worst, where any does not go well. */
export function nextOf(sums: readonly Sum[]): Sum | undefined {
  const [worst] = sums
  const goesWell = worst && worst.right === worst.rounds && worst.minutes < 1.5 * worst.toolMinutes
  return goesWell ? undefined : worst
}

const total = (results: readonly Result[], of: (result: Result) => number): number =>
  results.reduce((sum, result) => sum + of(result), 0)
