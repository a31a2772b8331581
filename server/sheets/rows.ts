import { limitsNow } from '../jobs/words/limits-now.ts'
import { degrees, upperFirst } from '../jobs/words/sentences.ts'
import { unplugId } from '../knowledge/instantiate/setup-cards.ts'
import { pinsInWords } from '../knowledge/instantiate/where/spot.ts'
import type { ReadingCard, SheetReading } from '../knowledge/sheet/sheet.ts'
import { followsWarmth } from '../measure/correct/follows-warmth.ts'
import { printLimits } from '../measure/reading/print.ts'
import { settings } from '../measure/reading/settings.ts'
import type { AtHand } from './at-hand.ts'
import { readingHref } from './hrefs.ts'
import type { PlugView, RowView } from './views.ts'

/** One reading as a line of its plug. */
export function rowOf(
  machine: { readonly id: string },
  { card, says }: SheetReading,
  partName: string,
  hand: AtHand,
): RowView {
  const { quantity, limits, limitsSource } = card.measurand
  const now = limitsNow(card.measurand, hand.conditions.air)
  return {
    href: readingHref(machine.id, card.id, hand),
    part: upperFirst(partName),
    says: upperFirst(says),
    between: betweenWords(card),
    pins: card.spot.connector ? card.spot.touch.join(', ').replace('ground', 'gnd') : '',
    setting: settings[quantity.setting].says,
    isOhms: quantity.unit === 'Ω',
    limits: printLimits(limits, quantity.unit),
    at: limitsHoldAt(card),
    ...(now !== undefined && { now }),
    source: limitsSource,
  }
}

/** "at 20 °C", "at 400 rpm"; empty where it is all one, or the sheet names none. */
export function limitsHoldAt({ measurand }: ReadingCard): string {
  const { at, rpm } = measurand
  if (followsWarmth(measurand) && at !== undefined) return `at ${degrees(at)}`
  return rpm === undefined ? '' : `at ${rpm}\u00a0rpm`
}

function betweenWords({ spot: { connector, touch } }: ReadingCard): string {
  return connector ? pinsInWords(touch) : touch.filter(Boolean).join(' and ')
}

/** Readings for which the machine stands alike: as many as one unplugging serves. */
export function grouped(
  readings: readonly SheetReading[],
  rowFor: (reading: SheetReading) => RowView,
): PlugView['groups'] {
  const groups = new Map<string, RowView[]>()
  for (const reading of readings) {
    const title = standsWords(reading.card)
    groups.set(title, [...(groups.get(title) ?? []), rowFor(reading)])
  }
  return [...groups].map(([title, rows]) => ({ title, rows }))
}

const engines: Readonly<Record<ReadingCard['engine'], string>> = {
  stopped: 'engine stopped',
  cranking: 'engine cranked',
  running: 'engine running',
}

/** "Plug apart, engine stopped" */
function standsWords({ spot: { connector }, setups, engine }: ReadingCard): string {
  if (connector === undefined) return upperFirst(engines[engine])
  const isApart = setups.some(({ id }) => id === unplugId(connector.id))
  return `Plug ${isApart ? 'apart' : 'joined'}, ${engines[engine]}`
}
