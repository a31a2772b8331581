import type { Prospect } from '../../diagnosis/model/walk.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import { bandName } from '../../measure/decide/bands.ts'
import { printLimits, printValue } from '../../measure/reading/print.ts'
import type { Band, Quantity } from '../../measure/reading/quantity.ts'
import type { Limits } from '../../measure/reading/reading.ts'
import { branchClause } from '../words/branch-words.ts'
import { suspectName } from '../words/names.ts'
import { clauses, percent, the, upperFirst } from '../words/sentences.ts'
import type { ProspectRow } from './view.ts'

/** What each answer would do to the tree, likeliest first. */
export function presentProspects(
  kase: Case,
  card: CheckCard,
  foreseen: readonly Prospect[],
): ProspectRow[] {
  return foreseen.map((prospect) => ({
    ...answerWords(card, prospect.outcome),
    chance: percent(prospect.probability),
    effect: effectWords(kase, prospect),
  }))
}

function effectWords(kase: Case, { clears, names, leads }: Prospect): string {
  const cleared = clears.map((name) => branchClause(kase, name))
  const says = cleared.length > 0 ? [`Clears: ${clauses(cleared, 3)}.`] : []
  if (names !== undefined) return [`Names ${the(suspectName(kase, names))}.`, ...says].join(' ')
  const likeliest = suspectName(kase, leads.part)
  const name = leads.part === null ? likeliest : the(likeliest)
  return [...says, `Likeliest then: ${name}, ${percent(leads.probability)}.`].join(' ')
}

/** An outcome of a check as its answer is given, and what that is called where it is judged. */
export function answerWords(
  card: CheckCard,
  outcome: string,
): Pick<ProspectRow, 'answer' | 'judged'> {
  if (!card.measurand) {
    const says = card.answers?.find(({ id }) => id === outcome)?.says ?? outcome
    return { answer: says, judged: '' }
  }
  const { quantity, limits } = card.measurand
  const band = outcome as Band
  return {
    answer: upperFirst(bandValues(band, quantity, limits)),
    judged: bandName(band, quantity),
  }
}

/** Which readings fall in a band, as far as it helps at the meter. */
function bandValues(band: Band, { unit, overRange }: Quantity, limits: Limits): string {
  switch (band) {
    case 'short':
      return 'next to nothing'
    case 'low':
      return limits.low === undefined ? 'too little' : `below ${printValue(limits.low, unit)}`
    case 'in range':
      return printLimits(limits, unit) + (overRange === band ? ', or OL' : '')
    case 'high':
      return limits.high === undefined ? 'too much' : `above ${printValue(limits.high, unit)}`
    case 'open':
      return overRange === band ? 'OL, or far too much' : 'far too much'
  }
}
