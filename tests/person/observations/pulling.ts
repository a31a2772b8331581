import { spread } from '../../../server/practice/world/chance.ts'
import type { CheckHere } from '../check.ts'
import { barred, cannotTell, type Seen } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { type Doing, doing } from '../world/site.ts'
import { ropeIsOff, ropeSpeed, runs } from '../world/systems/engine.ts'

/** rpm of one pull: never twice the same. From memory. */
export const pullSpeed = ({ site }: CheckHere): number =>
  ropeSpeed(site) * spread(site.random, 1, 0.08)

/** Three pulls, each with what comes of it; barred where there is no rope to pull. */
export function threePulls<T>(
  check: CheckHere,
  seeing: (now: Now, rpm: number) => T,
  what: Doing = {},
): readonly T[] | Seen {
  if (ropeIsOff(nowAt(check.site))) return barred('the rope starter is off')
  return [1, 2, 3].map(() => seeing(nowAt(doing(check.site, what)), pullSpeed(check)))
}

export const isSeen = <T>(pulled: readonly T[] | Seen): pulled is Seen => 'kind' in pulled

/** rpm of an engine that is held at a speed by ear, within a tenth. From memory. */
export const byEar = ({ site }: CheckHere, rpm: number): number =>
  rpm * spread(site.random, 1, 0.06)

/**
 * What the engine shows while it runs. It has to start first: barred where something that is apart or off keeps
 * it from that, and not to be told where what is wrong with it does.
 */
export function running(check: CheckHere, seeing: (now: Now) => Seen, what: Doing = {}): Seen {
  const { site } = check
  if (!runs(nowAt(site))) return notRunning(check)
  return seeing(nowAt(doing(site, what)))
}

export function notRunning({ site }: CheckHere): Seen {
  const { world, standing } = site
  const well = { ...site, world: { ...world, faults: [] } }
  if (runs(nowAt(well))) return cannotTell('it does not start')
  const apart = [...standing.apart, ...standing.off].join(', ')
  return barred(`it cannot start as it stands (${apart || 'plugs out or caps off'})`)
}
