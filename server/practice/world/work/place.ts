import type { Place } from '../../../knowledge/schema/wiring/power.ts'
import { type Half, node } from '../node.ts'

/** The node of a place; a pin is meant in the half that faces the harness, where nothing else is said. */
export const nodeOf = (place: Place, half: Half = 'harness'): string =>
  typeof place === 'string' ? place : node(place, half)
