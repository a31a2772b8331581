import type { Now } from '../now.ts'
import { seated } from '../site.ts'
import { magnets } from './volts.ts'

/** rpm from which a good module gives all it has, and below which it gives nothing. From memory. */
const wholeFrom = 400
const silentBelow = 150

/**
 * The spark that a module sends into its lead; 1 is that of a good one at a modest pull. Its energy comes from the
 * passing magnet: it falls with the square of the gap's loss, and hardly rises once it has triggered.
 */
export function moduleSpark(now: Now, output: string, rpm: number): number {
  const module = seated(now.site, 'module', output)
  const { gives = 1 } = now.effect(module)
  const seat = now.effect(seated(now.site, 'module-seat', output)).gives ?? 1
  if (rpm < silentBelow) return 0
  const speed = Math.min(1.4, rpm / wholeFrom)
  return Math.min(1.8, 1.2 * speed) * magnets(now) ** 2 * gives * seat
}
