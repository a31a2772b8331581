import type { Case, CheckCard } from '../../knowledge/case.ts'
import { limitsOf } from '../../knowledge/instantiate/card/measured.ts'
import { copperShare } from '../../measure/correct/temperature.ts'
import { type Known, type Mistake, recognise } from '../../measure/decide/recognise.ts'
import type { Measured } from '../../measure/measured.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import { byMeter } from '../../measure/reading/settings.ts'
import { units } from '../../measure/reading/units.ts'

/** The machine, whatever is complained of. */
type Sheet = Pick<Case, 'machine' | 'parts'>

/**
 * A sentence where a reading tells more of how it was taken than of the part: a thousand off, another
 * winding's pins, a harness left plugged in. Null for any other.
 */
export function mistakeIn(kase: Sheet, card: CheckCard, measured: Measured | null): string | null {
  const by = card.measurand
  if (by === undefined || measured === null) return null
  if (typeof measured.asRead !== 'number' || measured.corrected === null) return null
  const read = {
    asRead: measured.asRead,
    value: measured.corrected,
    u: measured.budget?.u ?? 0,
    copper: by.quantity.corrections.includes('copper') ? copperShare(by.material) : 0,
  }
  const { quantity, limits } = by
  const mistake = recognise(quantity.mistakes, read, limits, pathsBeside(kase, card, by.property))
  return mistake && sentenceFor(mistake, measured.asRead, quantity, kase)
}

/**
 * A sentence where nothing but a lone 1 was typed and 1 is hardly within the limits: some meters show
 * OL so. Null for anything else.
 */
export function loneOneIn(
  { measurand: by }: CheckCard,
  typed: string,
  measured: Measured | null,
): string | null {
  if (by === undefined || measured === null || measured.conformance.within > 0.5) return null
  if (!byMeter(by.quantity.setting) || !/^1(\s+1)*$/.test(typed)) return null
  const one = printValue(1, by.quantity.unit)
  return `A lone 1 at the left of the display is how some meters show OL. ${by.quantity.whenOver} If yours does read ${one}, send it again as it is and it will be taken.`
}

/** Other windings of the machine that the probes may have been on, or that may hang in parallel. */
export function pathsBeside(
  kase: Pick<Sheet, 'machine'>,
  card: CheckCard,
  property: string,
): Known[] {
  const connector = card.spot?.connector?.id
  return kase.machine.parts
    .filter(({ id }) => id !== card.part)
    .flatMap(({ id, limits = {}, reach = [] }) => {
      const sheet = limits[property]
      if (sheet === undefined) return []
      const sameConnector =
        connector !== undefined &&
        reach.some((way) => way.at === connector && way.for.includes(property))
      return [{ part: id, limits: limitsOf(sheet), sameConnector }]
    })
}

/** What to do about a reading in doubt. */
export const readOnceMore =
  'Read it once more; if it stays, send it again as it is and it will be taken.'

function sentenceFor(mistake: Mistake, asRead: number, { unit }: Quantity, kase: Sheet): string {
  const shown = printValue(asRead, unit)
  switch (mistake.kind) {
    case 'thousand off':
      return `${shown} is a thousand times off, and ${printValue(mistake.instead, unit)} would fit: look whether the meter shows ${unit} or ${units[unit].mixedUpWith}. ${readOnceMore}`
    case 'other unit':
      return `${shown} does not fit, and ${printValue(asRead, unit).replace(unit, mistake.unit)}, which is ${printValue(mistake.instead, unit)}, would: write the unit with it. ${readOnceMore}`
    case 'far above':
      return `${shown} is ${Math.round(mistake.times)} times the least that a good one gives: look at the decimal mark and at the range of the meter. ${readOnceMore}`
    case 'wrong pins':
      return `${shown} fits the ${nameOf(kase, mistake.part)}, which ends in the same plug: count the pins again. ${readOnceMore}`
    case 'harness left plugged':
      return `${shown} is what this and the ${nameOf(kase, mistake.part)} read side by side: make sure the harness is unplugged. ${readOnceMore}`
    case 'colder':
      return `${shown} is what a good one reads when it is colder than is said here: say how warm it is, or let it come to the warmth of the room. ${readOnceMore}`
    case 'fingers':
      return `${shown} is what it reads with fingers on both probes: hold them by the plastic. ${readOnceMore}`
  }
}

function nameOf(kase: Sheet, part: string): string {
  return kase.parts.get(part)?.name ?? part
}
