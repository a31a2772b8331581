import { explanations } from '../belief/suspects.ts'
import type { Model } from '../model/model.ts'

/**
 * Minutes of starting over: for whoever fitted a part that was not it, and has the owner and the machine
 * back; and for whoever looks outside this tree although the cause was in it. From memory.
 */
export const startingOver = 240

/** Minutes lost by a part that the model gives no price for: a mid-priced part. From memory. */
const unpricedMinutes = 90

/** Minutes lost for each explanation of the model when it is acted on and is not the right one. */
export function wrongMinutes(model: Model): Float64Array {
  return Float64Array.from(explanations(model).parts, (parts) => minutesToFit(model, parts))
}

/** Minutes to fit these parts, their prices included; none: to look outside this tree. */
export function minutesToFit(model: Model, parts: readonly string[]): number {
  if (parts.length === 0) return startingOver
  const minutes = parts.map((part) => model.wrongMinutes?.get(part) ?? unpricedMinutes)
  // A part that costs nothing to fit would be fitted first whatever its chance.
  return Math.max(
    0.1,
    minutes.reduce((a, b) => a + b, 0),
  )
}
