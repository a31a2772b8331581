import { between, happens } from '../../../../server/practice/world/chance.ts'
import { type Comes, type Effects, visible } from '../effect.ts'

const heat = (above: number): Comes => ({ with: 'heat', idle: 0, provoked: 1, above })

/** A shunt that is shorted, wholly or in part; one that is open. */
export const regulator: Effects = {
  shorted: ({ random }) => ({ across: between(random, 0.05, 0.5) }),
  'open-burns-lamps': () => ({ gives: 0 }),
  open: () => ({ gives: 0 }),
  'partly-shorted': ({ random }) => ({ across: between(random, 0.6, 3) }),
}

/**
 * What is left of the charge, or what it lets through beyond that. A diode that is shorted loads its leg; the battery runs back to metal only where one
 * of each side is. From memory: so it is in two or three of eight.
 */
export const rectifier: Effects = {
  open: ({ random }) => ({
    gives: happens(random, 0.4) ? 0 : between(random, 0, 0.45),
    ...(happens(random, 0.7) && { looks: 'one-open' }),
  }),
  shorted: ({ random }) => ({
    gives: between(random, 0, 0.4),
    across: between(random, 0.1, 2),
    looks: 'one-shorted',
    ...(happens(random, 0.38) && { leak: between(random, 0.1, 2) }),
  }),
  'shorted-through': () => ({ gives: 0, leak: 0.3, looks: 'one-shorted' }),
  unregulated: ({ random }) => ({ gives: between(random, 1.8, 3.5) }),
}

export const injectionUnit: Effects = {
  'no-drive': () => ({}),
  'no-pulse': () => ({}),
  'fails-hot': ({ random }) => ({
    gives: 0,
    comes: heat(between(random, 42, 58)),
  }),
}

/** A dash shows it or does not; what it looks like is drawn where it is looked at. */
export const dash: Effects = { dead: () => ({}), wet: () => ({}) }

/** What the engine burns, and the way it comes. */
export const tankFuel: Effects = {
  stale: ({ random }) => ({ gives: 0, ...(happens(random, visible.plain) && { looks: 'old' }) }),
  watery: ({ random }) => ({ gives: 0, ...(happens(random, visible.plain) && { looks: 'water' }) }),
}
export const fuelFeed: Effects = {
  boils: ({ random }) => ({
    gives: 0,
    comes: heat(between(random, 35, 55)),
    ...(happens(random, visible.plain) && { looks: 'hot-side' }),
  }),
  shut: () => ({ gives: 0, looks: 'shut' }),
  blocked: ({ random, complaint }) => ({
    gives: 0,
    ...(complaint === 'dies-hot' && { comes: heat(between(random, 35, 55)) }),
    ...(happens(random, visible.plain) && { looks: 'trickles' }),
  }),
}
export const carburettor: Effects = {
  blocked: ({ random }) => ({ gives: 0, ...(happens(random, visible.half) && { looks: 'dirty' }) }),
  // Cold it helps, and is not missed.
  'choke-closed': ({ random, complaint }) => ({
    gives: 0,
    ...(complaint === 'hard-start-hot' && { comes: heat(35) }),
    ...(happens(random, visible.plain) && { looks: 'stays-shut' }),
  }),
  'idle-low': () => ({ gives: 0 }),
  'leaks-over': ({ random }) => ({ gives: 0, comes: heat(between(random, 30, 45)) }),
  'choke-open': ({ random }) => ({
    gives: 0,
    ...(happens(random, visible.plain) && { looks: 'idle' }),
  }),
}

/** No part is broken: fuel that wets every plug, or has glued every injector. The key moves the moment of the spark. */
export const flooding: Effects = {
  wet: ({ complaint }) => ({
    looks: 'wet',
    ...(complaint === 'hard-start-hot' && { comes: heat(40) }),
  }),
}
export const staleFuel: Effects = { glued: () => ({ gives: 0 }) }
export const flywheelKey: Effects = { sheared: () => ({ looks: 'sheared' }) }
