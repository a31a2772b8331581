import type { Standing } from '../../standing/standing.ts'
import { coverOf, servesRunning } from '../../standing/way/serves-running.ts'
import type { Step } from '../../standing/way/way-to.ts'

/** What was opened, by a name that no other thing has in `home.yaml`: a cover came off to put something right. */
export const coversOff = 'covers off'

/** A cover lies over it that nobody has off now: it was never opened for a check, or went back after a cut line. */
export function liesCovered(
  input: Pick<Standing, 'kase' | 'knowledge' | 'asItStands'>,
  { of, parts }: { readonly of: string; readonly parts: readonly string[] },
): boolean {
  const { kase } = input
  const stands = new Set(input.asItStands.setups.map(({ id }) => id))
  const isCover = (step: Step) => coverOf(kase, step) !== undefined && !servesRunning(input, step)
  return [...kase.checks.values()]
    .filter(({ id, part }) => id === of || (part !== undefined && parts.includes(part)))
    .flatMap(({ setups }) => setups)
    .some((setup) => isCover({ setup, unsure: false }) && !stands.has(setup.id))
}
