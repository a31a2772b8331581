import type { Barring, Case, CheckCard } from '../../knowledge/case.ts'
import type { Folded } from '../record/fold.ts'

/** The answers so far that make something unsafe, as long as the check that would clear it is not made. */
export function barringsOf({ checks }: Case, { readings }: Folded): readonly Barring[] {
  return [...readings].flatMap(([check, { touches }]) => {
    const answers = checks.get(check)?.answers ?? []
    const last = touches.findLast(({ kind }) => kind === 'answer')
    const bars = answers.find(({ id }) => last?.kind === 'answer' && last.answer === id)?.bars
    const isMade = [...readings.keys()].some((made) => kindOf(made) === bars?.until)
    return bars === undefined || isMade ? [] : [bars]
  })
}

/** Why a check is not safe after what was answered, or null where it is. */
export function barredBy(
  barrings: readonly Barring[],
  { engine }: Pick<CheckCard, 'engine'>,
): string | null {
  return barrings.find((each) => each.engine.includes(engine))?.says ?? null
}

const kindOf = (check: string): string => check.split('.')[0] ?? check
