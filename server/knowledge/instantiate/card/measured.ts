import { entry, named } from '../../../diagnosis/model/named.ts'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Limits } from '../../../measure/reading/reading.ts'
import { asItMoves } from '../../../measure/reading/touching.ts'
import type { CheckCard } from '../../case.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine, SheetLimits } from '../../schema/machine.ts'
import type { LimitsOf, PlannedCheck } from '../planned-check.ts'
import { offeredOn } from '../where/offered.ts'

/**
 * The bands of what is measured, or the answers, by name.
 *
 * @throws RangeError if the kind has neither; the lint has seen to that before.
 */
export function outcomesOf(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
): readonly string[] {
  const answers = offeredOn(check.kind, machine)
  if (check.choices !== undefined) return check.choices.map(({ output }) => output)
  if (check.limitsOf !== undefined) {
    const { quantity } = propertyOf(check.limitsOf, knowledge)
    return entry(knowledge.quantities, quantity).bands
  }
  if (answers === undefined) throw new RangeError(`check ${check.id} has no limits and no answers`)
  return answers.map(({ id }) => id)
}

function propertyOf({ part, property }: LimitsOf, { partKinds }: Knowledge) {
  return entry(named(partKinds, part.kind).properties, property)
}

/**
 * Limits of a sheet as numbers.
 *
 * @throws RangeError if a text is no value with a unit; the lint has seen to that before.
 */
export function limitsOf(sheet: SheetLimits): Limits {
  const value = (text: string): number => {
    const parsed = parseQuantityText(text)
    if (parsed === null) throw new RangeError(`not a value with a unit: ${text}`)
    return parsed.value
  }
  return {
    ...(sheet.low !== undefined && { low: value(sheet.low) }),
    ...(sheet.high !== undefined && { high: value(sheet.high) }),
  }
}

/** What is measured by a planned check, or nothing where it is looked at, listened to or asked. */
export function measuredBy(check: PlannedCheck, knowledge: Knowledge): CheckCard['measurand'] {
  if (check.limitsOf === undefined) return undefined
  const { property, sheet } = check.limitsOf
  const { material, ...of } = propertyOf(check.limitsOf, knowledge)
  const quantity = entry(knowledge.quantities, of.quantity)
  const { moved } = check.kind
  return {
    property,
    quantity: moved ? { ...quantity, touches: asItMoves(quantity.touches) } : quantity,
    ...(moved && { moved }),
    limits: limitsOf(sheet),
    limitsSource: sheet.source,
    material: sheet.copper === undefined ? (material ?? 'not copper') : { copper: sheet.copper },
    ...(sheet.at !== undefined && { at: sheet.at }),
    ...(sheet.rpm !== undefined && { rpm: sheet.rpm }),
    ...(check.kind.places !== undefined && { places: check.kind.places }),
    ...(check.kind.warmedTo !== undefined && { warmedTo: check.kind.warmedTo }),
  }
}
