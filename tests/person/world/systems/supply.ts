import { partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Now } from '../now.ts'
import { isOnGround, keyFeed, starting } from './starting.ts'

/** Where the key stands. */
export type Key = 'OFF' | 'RUN' | 'START'

/** V of a rested battery, and of one that is charged while the engine runs; Ω of an igniter at work. From memory. */
const rested = 12.6
const charged = 13.6
const igniterOhms = 9
/** rpm from which it runs by itself. */
const runsFrom = 900

/** V that reach an igniter which the battery feeds, by where the key stands and whether the engine runs. */
export function supplyVolts(now: Now, key: Key, runs = false): number {
  const source = key === 'START' ? whileStarting(now) : runs ? charged : rested
  if (now.site.standing.jumper === 'supply') return source
  const way = wayOhms(now, key)
  return Number.isFinite(way) ? (source * igniterOhms) / (igniterOhms + way) : 0
}

/** V at the battery as the metal of the engine sees it. */
function whileStarting(now: Now): number {
  const { battery, leadDrop, groundDrop } = starting(now)
  return Math.max(0, battery - leadDrop - groundDrop)
}

function wayOhms(now: Now, key: Key): number {
  const only = (role: string) => partsIn(now.site.world.machine, role)[0]!.id
  const { series = 0, across = Infinity } = now.effect(only('key-switch'))
  const drops = key === 'START' && now.has(only('key-switch'), 'drops-at-start')
  const contact = key === 'OFF' ? across : drops ? Infinity : series
  const { apart } = now.site.standing
  if (apart.has('key-plug') || isOnGround(now, 'supply-wires')) return Infinity
  const wires = now.effect(only('supply-wires')).series ?? 0
  const fuse = now.effect(only('ignition-fuse')).series ?? 0
  return keyFeed(now) + contact + wires + fuse
}

/** What the supply lets the igniter charge, as a share of a good one: below 7 V it does not start to. From memory. */
export function fedShare(now: Now, rpm: number): number {
  if (now.site.standing.apart.has('igniter-plug')) return 0
  const runs = rpm > runsFrom
  const key = runs ? now.site.standing.stopSwitch : 'START'
  const volts = supplyVolts(now, key, runs)
  return volts < 7 ? 0 : Math.min(1, (volts - 4) / 5)
}
