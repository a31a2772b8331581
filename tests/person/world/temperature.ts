import { partNamed } from '../../../server/practice/world/sheet.ts'
import type { Site } from './site.ts'

/**
 * How hot a part is at the end of a run that brings the trouble, in K above the air or in °C, and how fast it
 * cools, minutes. Common practice, no published source: what sits behind the flywheel is hottest and
 * longest hot, a box in the wind cools in minutes.
 */
const heats: Readonly<Record<string, { readonly hot: number; readonly minutes: number }>> = {
  winding: { hot: 95, minutes: 30 },
  'grounded-winding': { hot: 95, minutes: 30 },
  condenser: { hot: 80, minutes: 30 },
  'three-phase-winding': { hot: 95, minutes: 30 },
  pickup: { hot: 90, minutes: 30 },
  flywheel: { hot: 80, minutes: 30 },
  igniter: { hot: 65, minutes: 9 },
  'injection-unit': { hot: 65, minutes: 9 },
  'ignition-coil': { hot: 78, minutes: 14 },
  'ignition-module': { hot: 80, minutes: 15 },
  'spark-plug': { hot: 180, minutes: 8 },
  pump: { hot: 50, minutes: 20 },
  cylinder: { hot: 120, minutes: 20 },
  // What soaks into them once the fan stands still.
  carburettor: { hot: 65, minutes: 20 },
  // What lies against the exhaust, or carries more than it should.
  wiring: { hot: 75, minutes: 12 },
  fuse: { hot: 70, minutes: 10 },
  'key-switch': { hot: 70, minutes: 10 },
  'fuel-feed': { hot: 70, minutes: 12 },
  flooding: { hot: 65, minutes: 20 },
}

/** °C of a part now. */
export function celsiusOf({ world, standing, clock, doing }: Site, part: string): number {
  if (doing.tempered?.part === part) return doing.tempered.celsius
  const { parts } = world.weather
  const heat = heats[partNamed(world.machine, part).kind]
  if (heat === undefined || standing.hotAt === null) return parts
  const since = Math.max(0, clock - standing.hotAt)
  return parts + (heat.hot - parts) * Math.exp(-since / heat.minutes)
}

/** Copper reads more when it is warm, IEC 60028. */
export const copper = (ohms: number, celsius: number): number =>
  ohms * (1 + 0.00393 * (celsius - 20))
