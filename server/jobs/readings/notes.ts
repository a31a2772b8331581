import type { Measurand } from '../../knowledge/case.ts'
import type { Contribution } from '../../measure/doubt/budget.ts'
import type { Measured, Note } from '../../measure/measured.ts'
import { printLimits, printValue } from '../../measure/reading/print.ts'
import type { Limits, Reading } from '../../measure/reading/reading.ts'
import { byMeter, settings } from '../../measure/reading/settings.ts'
import { percent, plusMinus } from '../words/sentences.ts'

/**
 * What has to be said beside the figures of a reading, as sentences.
 *
 * @param isNamed a part is named by all readings together, whatever this one says by itself
 */
export function noteSentences(
  measured: Measured,
  by: Measurand,
  touches: readonly Reading[],
  isNamed = false,
): string[] {
  const undecided = undecidedSentence(measured, by)
  const anyWouldDo = touches.every((touch) => isWithin(touch, by.limits))
  const notes = measured.notes.filter(
    // Whichever of them counts, the part is good: how they scatter is nobody's trouble.
    ({ kind }) => !(kind === 'poor contact' && anyWouldDo && measured.decision === 'conforms'),
  )
  return [
    ...notes.flatMap((note) => noteSentence(note, measured, by, isNamed)),
    ...(undecided === null ? [] : [undecided]),
  ]
}

function isWithin(touch: Reading, { low = -Infinity, high = Infinity }: Limits): boolean {
  return touch.kind === 'value' && touch.value >= low && touch.value <= high
}

/** Leads that make up less than this share of the doubt are not worth a sentence. */
const leadsMatter = 0.1

function noteSentence(
  note: Note,
  { budget }: Measured,
  { quantity }: Measurand,
  isNamed: boolean,
): string[] {
  const { setting, touches, unit } = quantity
  const { instrument } = settings[setting]
  switch (note.kind) {
    case 'poor contact':
      return [
        `The ${touches.many} scatter more than the ${instrument} can explain: ${touches.scatter.is} (${note.used} of ${note.of} count). ${touches.scatter.remedy}`,
      ]
    case 'touch again':
      return [
        `${isNamed ? 'Named by all readings together, not by this one alone' : 'Not condemned yet'}: every ${touches.one} may have been a poor one, with a chance of ${percent(note.chanceAllPoor)}. ${touches.askAgain}`,
      ]
    case 'leads not zeroed':
      return shareOf(budget, 'leads') < leadsMatter
        ? []
        : ['Leads not zeroed: zero them, and this is known better.']
    case 'beyond the meter':
      return [
        `Beyond the ${instrument}: ${byMeter(setting) ? 'its highest range' : 'it'} ends at ${printValue(note.top, unit)}. Look at the ${byMeter(setting) ? 'setting' : 'unit'} and read again.`,
      ]
    case 'unlike':
      return [
        `One of them reads ${note.ratio.toFixed(2)} times the middle one. Good ones are alike within a tenth, whatever the limits leave room for.`,
      ]
    case 'adaptor cannot judge':
      return [
        `A passive peak adaptor cannot judge below ${note.below}\u00a0V, as its diode keeps too much of it: this reading weighs nothing.`,
      ]
    case 'speed not known':
      return [
        `Speed not known: anything from ${note.slowest} to ${note.fastest}\u00a0rpm. Read it off a counter, and this is known far better.`,
      ]
  }
}

const doubts: Readonly<Record<Contribution['what'], string>> = {
  meter: 'the accuracy of the meter',
  leads: 'the leads',
  temperature: 'the temperature',
  touches: 'the touches',
  speed: 'the speed',
  adaptor: 'the adaptor',
  blade: 'the step to the next blade',
}

/** Why nothing can be said yet, and what would help most. */
function undecidedSentence(measured: Measured, { limits, quantity }: Measurand): string | null {
  const { budget, decision, notes } = measured
  // Then it is not what is known of the value that leaves it open, but whether the probes touched.
  if (notes.some(({ kind }) => kind === 'touch again')) return null
  if (decision !== 'undecided' || budget === null || budget.lines.length === 0) return null
  const whats = Object.keys(doubts) as Contribution['what'][]
  const most = whats.reduce((a, b) => (shareOf(budget, b) > shareOf(budget, a) ? b : a))
  const within = printLimits(limits, quantity.unit)
  return `Not sure yet: known within ${plusMinus(budget.expanded, quantity.unit)}, against limits of ${within}. ${percent(shareOf(budget, most))} of that doubt comes from ${most === 'meter' ? `the accuracy of the ${settings[quantity.setting].instrument}` : doubts[most]}.`
}

function shareOf(budget: Measured['budget'], what: Contribution['what']): number {
  return (budget?.lines ?? []).reduce((sum, line) => sum + (line.what === what ? line.share : 0), 0)
}
