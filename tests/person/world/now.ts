import { seedOf } from '../../../server/practice/world/chance.ts'
import { seeded } from '../../bench/random.ts'
import type { Comes, Effect } from './effect.ts'
import type { GoodPart } from './good-part.ts'
import type { Site } from './site.ts'
import { celsiusOf, copper } from './temperature.ts'
import type { HiddenFault } from './world.ts'

/** What is wrong at this moment: what comes and goes has come or not. */
export interface Now {
  readonly site: Site
  /** Whether a part fails in that way now. */
  has(part: string, ...modes: readonly string[]): boolean
  effect(part: string): Effect
  good(part: string): GoodPart
}

/** Looks at the world once: within one look a loose wire makes contact or not. */
export function nowAt(site: Site): Now {
  const gone = replaced(site)
  const here = site.world.faults.filter((fault) => isThere(site, fault) && !gone(fault.part))
  return {
    site,
    has: (part, ...modes) => here.some((each) => each.part === part && modes.includes(each.mode)),
    effect: (part) => here.find((each) => each.part === part)?.effect ?? {},
    good: (part) => site.world.good.get(part)!,
  }
}

/** A known good box comes with good outputs. */
function replaced({ world, standing: { standIns } }: Site): (part: string) => boolean {
  const { parts } = world.machine
  const roles = new Set(parts.filter(({ id }) => standIns.has(id)).map(({ role }) => role))
  return (id) => {
    const { role } = parts.find((part) => part.id === id)!
    const box = { 'igniter-output': 'igniter', 'unit-output': 'pump-driver' }[role]
    return standIns.has(id) || (box !== undefined && roles.has(box))
  }
}

function isThere(site: Site, { part, mode, effect: { comes } }: HiddenFault): boolean {
  // Drawn every time, so that what comes next does not depend on it.
  const drawn = site.random()
  if (mode === 'flat' && site.standing.charged) return false
  if (comes === undefined) return true
  const chance = provokedChance(site, part, comes)
  // Left alone it stays as it is until the hands do something else.
  return chance === null ? asLeft(site, part) < comes.idle : drawn < chance
}

function asLeft({ world, clock }: Site, part: string): number {
  return seeded(seedOf(world.seed, part, 'left alone', Math.round(clock * 10)))()
}

/** Null where nothing provokes it. */
function provokedChance(site: Site, part: string, comes: Comes): number | null {
  const { shaken, wetted, certain } = site.doing
  if (certain !== undefined && comes.with !== 'heat') return certain ? 1 : 0
  switch (comes.with) {
    case 'heat':
      return celsiusOf(site, part) > comes.above! ? comes.provoked : null
    case 'shaking':
      return shaken === part || shaken === 'all' ? comes.provoked : null
    case 'water': {
      const wet = wetted === part || wetted === 'all' || misted(site)
      return wet ? comes.provoked : null
    }
  }
}

/** Water on leads and caps dries in a quarter of an hour. From memory. */
const misted = ({ standing: { wetAt }, clock }: Site) => wetAt !== null && clock - wetAt < 15

/** Ω of a part in its present state, without what is in its way: copper warmed, bridged turns gone. */
export function ohmsOf(now: Now, part: string, isCopper = true): number {
  const { turns = 1 } = now.effect(part)
  const ohms = now.good(part).ohms * turns
  return isCopper ? copper(ohms, celsiusOf(now.site, part)) : ohms
}
