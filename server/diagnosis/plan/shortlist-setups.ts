import type { Check } from '../model/model.ts'

/** Set-ups that are followed one by one, as bits of a number. */
const mostSetups = 30

export interface FoldedSetups {
  /** Minutes of each set-up that is followed. */
  readonly setupMinutes: readonly number[]
  /** For each check: its minutes without those set-ups, and the set-ups as bits. */
  readonly minutes: readonly number[]
  readonly bits: readonly number[]
}

/**
 * Set-ups not yet made, as bits, so that each is paid once however many checks need it. Beyond thirty
 * they count into their check's own minutes: dearer than they are, never cheaper.
 */
export function foldSetups(checks: readonly Check[], made: ReadonlySet<string>): FoldedSetups {
  const index = new Map<string, number>()
  const setupMinutes: number[] = []
  const folded = checks.map((check) => {
    let { minutes } = check
    let bits = 0
    for (const setup of check.setups) {
      if (made.has(setup.id)) continue
      if (!index.has(setup.id) && index.size < mostSetups) {
        index.set(setup.id, index.size)
        setupMinutes.push(setup.minutes)
      }
      const at = index.get(setup.id)
      if (at === undefined) minutes += setup.minutes
      else bits |= 1 << at
    }
    return { minutes, bits }
  })
  return {
    setupMinutes,
    minutes: folded.map(({ minutes }) => minutes),
    bits: folded.map(({ bits }) => bits),
  }
}

/** Minutes of the set-ups whose bits these are. */
export function minutesOfSetups(
  { setupMinutes }: Pick<FoldedSetups, 'setupMinutes'>,
  bits: number,
): number {
  let minutes = 0
  for (let i = 0; bits >> i !== 0; i += 1) if ((bits >> i) & 1) minutes += setupMinutes[i]!
  return minutes
}
