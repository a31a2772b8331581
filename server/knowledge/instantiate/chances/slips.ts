import { likeliest } from '../../../diagnosis/belief/likeliest.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Chances } from '../../schema/shared.ts'
import type { PlannedCheck } from '../planned-check.ts'
import { onMachine } from '../where/offered.ts'
import { floored } from './doubt.ts'
import { healthyRow } from './rows.ts'

/**
 * How one take of a check slips: `[s][o]` is the chance of reading o where the part itself would give s.
 *
 * What a healthy part reads beside its likeliest outcome is contact and hand by definition of that row,
 * and the next take is free of it; the same share is taken of every other outcome. Where a gate is
 * watched, the smaller of the two rows' shares counts, since the rest may be the machine's own (not
 * warm enough yet). What an owner remembers, or what is seen and stays, is the same the second time: undefined.
 */
export function slipsOf(
  check: PlannedCheck,
  outcomes: readonly string[],
  machine: Machine,
): number[][] | undefined {
  const { about, lasting } = check.kind
  if (about.kind === 'question' || about.kind === 'which' || lasting) return undefined
  const row = (chances: Chances) => floored(onMachine(chances, check.kind, machine), outcomes)
  const first = row(about.kind === 'gate' ? about.holds : healthyRow(check, about, machine))
  const rows = about.kind === 'gate' ? [first, row(about.holdsNot)] : [first]
  const share = Math.min(...rows.map((row) => 1 - Math.max(...row)))
  return outcomes.map((_, state) => {
    const row = rows.find((each) => likeliest(each) === state) ?? first
    const expected = likeliest(row)
    const off = 1 - Math.max(...row)
    return row.map(
      (p, o) =>
        (o === state ? 1 - share : 0) + (o === expected || off === 0 ? 0 : (share * p) / off),
    )
  })
}
