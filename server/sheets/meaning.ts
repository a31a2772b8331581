import { bitsBetween, type OneFault } from '../diagnosis/belief/one-fault.ts'
import { percent, the, upperFirst } from '../jobs/words/sentences.ts'
import {
  type DrawnSheet,
  minutesTo,
  notClearedFrom,
  type SheetFailure,
  type SheetReading,
} from '../knowledge/sheet/sheet.ts'
import type { Measured } from '../measure/measured.ts'
import { counted } from '../web/words.ts'
import type { MeaningView } from './views.ts'

/** Less likely failures are counted, and not listed. */
const worthALine = 0.03

/** Which failures give such a reading, the likeliest first; nothing where nothing shows in it. */
export function presentMeaning(
  sheet: DrawnSheet,
  { failures }: SheetReading,
  { none, each }: OneFault,
  { decision }: Measured,
): MeaningView | undefined {
  if (failures.length === 0) return undefined
  const all = [
    {
      says: `None of these: a slip of hand or contact${decision === 'undecided' ? ', or a good part at the edge' : ''}`,
      chance: none,
    },
    ...failures.map((failure, f) => ({
      says: failureWords(sheet, failure),
      chance: each[f] ?? 0,
    })),
  ].sort((a, b) => b.chance - a.chance)
  const shown = all.filter(({ chance }) => chance >= worthALine)
  const left = all.length - shown.length
  const share = 1 - shown.reduce((sum, { chance }) => sum + chance, 0)
  return {
    rows: shown.map(({ says, chance }) => ({ says, chance: percent(chance) })),
    rest: left === 0 ? '' : `${counted(left, 'less likely one')}: ${percent(share)} together.`,
  }
}

const failureWords = ({ parts }: DrawnSheet, { part, says }: SheetFailure): string =>
  `${upperFirst(the(parts.get(part)?.name ?? part))} ${says}`

/** What a good reading does not clear: the failures that read good as often as not. */
export function notCleared(sheet: DrawnSheet, { card, failures }: SheetReading): readonly string[] {
  const good = card.outcomes.indexOf('in range')
  return failures
    .filter(({ part, row }) => part === card.part && (row[good] ?? 0) >= notClearedFrom)
    .sort((a, b) => b.rate - a.rate)
    .map(
      (failure) =>
        `${failureWords(sheet, failure)}: reads good ${percent(failure.row[good] ?? 0)} of the time.`,
    )
}

/** As many as one wants to choose from. */
const mostToSettle = 3

/**
 * The other readings of the sheet that would tell most of what this one leaves open, per minute; those
 * that tell next to nothing are left out.
 */
export function wouldSettle(
  { readings }: DrawnSheet,
  { card: { id }, failures }: SheetReading,
  { none, each }: OneFault,
): readonly SheetReading[] {
  const p = [none, ...each]
  return [...readings.values()]
    .filter(({ card }) => card.id !== id)
    .map((other) => ({
      other,
      bits: bitsBetween(p, rowsUnder(other, failures)) / minutesTo(other),
    }))
    .filter(({ bits }) => bits > 0.002)
    .sort((a, b) => b.bits - a.bits)
    .slice(0, mostToSettle)
    .map(({ other }) => other)
}

/** How another reading comes out while none of these failures is there, and while each of them is. */
function rowsUnder(other: SheetReading, failures: readonly SheetFailure[]) {
  const rowOf = ({ part, says }: SheetFailure) =>
    other.failures.find((each) => each.part === part && each.says === says)?.row ?? other.healthy
  return [other.healthy, ...failures.map(rowOf)]
}
