import { fieldLabel, hint } from '../jobs/check/form.ts'
import { presentManner } from '../jobs/check/manner.ts'
import { unfitSentence } from '../jobs/check/meter.ts'
import { meterKeys } from '../jobs/check/meter-keys.ts'
import { isReadApart } from '../jobs/check/present.ts'
import { presentSpot } from '../jobs/check/spot.ts'
import type { StepsView } from '../jobs/check/view.ts'
import { fitnessFor } from '../jobs/measuring/foreseen.ts'
import type { CheckForm } from '../jobs/posts/check-form.ts'
import { cautionsEverywhere, cautionsView } from '../jobs/words/cautions/cautions.ts'
import { limitsNow } from '../jobs/words/limits-now.ts'
import { sentence, upperFirst } from '../jobs/words/sentences.ts'
import type { CheckCard } from '../knowledge/case.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { DrawnSheet, ReadingCard, SheetReading } from '../knowledge/sheet/sheet.ts'
import { printLimits } from '../measure/reading/print.ts'
import type { AtHand } from './at-hand.ts'
import { airWords } from './at-hand.ts'
import { presentCircumstances } from './circumstances.ts'
import { sheetHref } from './hrefs.ts'
import { judgeOnce } from './judge.ts'
import { presentResult } from './result.ts'
import { limitsHoldAt } from './rows.ts'
import type { ReadingPage, SheetForm } from './views.ts'

/** What the page of one reading is asked for. */
export interface AskedReading {
  readonly reading: SheetReading
  readonly form: CheckForm
  /** Whether something was sent to be judged. */
  readonly sent: boolean
}

/** One reading of a sheet: where to touch, what a good one shows, and what the meter's figure is worth. */
export function presentReading(
  knowledge: Knowledge,
  sheet: DrawnSheet,
  hand: AtHand,
  { reading, form, sent }: AskedReading,
): ReadingPage {
  const { card } = reading
  const { machine } = sheet
  const { limits, quantity, limitsSource } = card.measurand
  const now = limitsNow(card.measurand, hand.conditions.air)
  const once = sent ? judgeOnce(sheet, card, form, hand) : undefined
  const problem = typeof once === 'string' ? once : undefined
  const name = machineName(machine)
  const unfit = unfitSentence(
    fitnessFor(card.measurand, hand.meter, hand.conditions),
    card.measurand,
  )
  return {
    title: `${upperFirst(card.title)}, ${name}`,
    machine: name,
    notices: true,
    back: { href: sheetHref(machine.id, hand), text: 'All limits of this machine' },
    heading: upperFirst(card.title),
    cautions: cautionsView([...card.cautions, ...cautionsEverywhere({ knowledge })]),
    spot: presentSpot(card.spot, knowledge.colours, {
      isApart: isReadApart(card),
      loose: card.loose,
      looked: card.meter === undefined && card.spot.connector === undefined,
    }),
    limits: {
      verb: quantity.goodOne,
      says: `${printLimits(limits, quantity.unit)} ${limitsHoldAt(card)}`.trim(),
      ...(now !== undefined && { now: `${now} as warm as the air, ${airWords(hand)}` }),
      at: limitsHoldAt(card),
      source: limitsSource,
    },
    ...(card.meter && { setting: card.meter }),
    ...(unfit && { unfit }),
    steps: stepsOf(card),
    action: `/machines/${encodeURIComponent(machine.id)}/readings/${encodeURIComponent(card.id)}`,
    form: formOf(card, hand, form, problem),
    circumstances: presentCircumstances(knowledge, hand, card),
    ...(once !== undefined &&
      typeof once !== 'string' && { result: presentResult(knowledge, sheet, reading, once, hand) }),
  }
}

/** From a machine with all joined, and back to one. */
function stepsOf({ setups, do: own }: CheckCard): StepsView[] {
  const ready = setups.map((setup) => sentence(setup.do))
  const back = setups
    .filter(({ once }) => !once)
    .flatMap(({ undo }) => (undo ? [sentence(undo.do)] : []))
    .toReversed()
  const parts = [
    { title: 'Make ready', steps: ready },
    { title: 'Do this', steps: own.map(sentence) },
    { title: 'Afterwards put back', steps: back },
  ]
  let from = 1
  return parts
    .map((part) => {
      const numbered = { ...part, from }
      from += part.steps.length
      return numbered
    })
    .filter(({ steps }) => steps.length > 0)
}

function formOf(
  card: ReadingCard,
  hand: AtHand,
  { typed, choice, warmth, celsius, rpm }: CheckForm,
  problem: string | undefined,
): SheetForm {
  const { quantity } = card.measurand
  return {
    label: fieldLabel(card.measurand, hand.conditions),
    hint: hint(card.measurand),
    unit: quantity.unit,
    ...(quantity.overRange && { over: 'OL' }),
    keys: meterKeys(quantity),
    typed: choice === 'over' ? `${typed} OL`.trim() : typed,
    ...presentManner(card, hand.conditions, { tried: { warmth, celsius, rpm } }),
    ...(problem && { problem }),
  }
}
