import type { Measurand } from '../../knowledge/case.ts'
import type { Temperature } from '../../measure/correct/temperature.ts'
import type { Conditions, PartWarmth } from '../record/events.ts'

/** How far the temperature of a part may be off what is said of it, K. From memory. */
const halfWidths = {
  'as the air': 5,
  'cold-soaked': 2,
  'hand-warm': 15,
  'running hot': 30,
  measured: 3,
}

/** °C, where nobody says otherwise: what limits hold at. */
export const usualAir = 20

/** A winding behind the flywheel of an engine that has just run, °C. From memory. */
const runningHot = 90

/** What a hand calls warm and can stay on, °C, whatever the air is. From memory. */
const handWarm = 45

/**
 * What is meant where nothing else is said: a part that the check itself warms is as warm as its steps
 * make it, and a hot engine has hot parts.
 */
export function usualWarmth(
  { engine }: Conditions,
  measurand?: Pick<Measurand, 'warmedTo'>,
): PartWarmth {
  if (measurand?.warmedTo !== undefined) return { kind: 'measured', celsius: measurand.warmedTo }
  return { kind: engine === 'hot' ? 'running hot' : 'as the air' }
}

/** The temperature of a part, °C, and how far it may be off. */
export function temperatureOf(warmth: PartWarmth, { air }: Conditions): Temperature {
  return { celsius: celsiusOf(warmth, air), halfWidth: halfWidths[warmth.kind] }
}

function celsiusOf(warmth: PartWarmth, air: number): number {
  if (warmth.kind === 'measured') return warmth.celsius
  if (warmth.kind === 'hand-warm') return handWarm
  return warmth.kind === 'running hot' ? runningHot : air
}
