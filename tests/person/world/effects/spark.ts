import {
  anyScale,
  between,
  happens,
  pick,
  spread,
} from '../../../../server/practice/world/chance.ts'
import { type Comes, type Draw, type Effect, type Effects, visible } from '../effect.ts'

const heat = (above: number): Comes => ({ with: 'heat', idle: 0, provoked: 1, above })

/** A crack breaks down before the gap does: its voltage is all that is left. In the wet only, where the owner says so. */
const leaking = ({ random, complaint }: Draw, looks?: string): Effect => ({
  holdsOff: between(random, 0, 0.9),
  ...(looks && { looks }),
  ...(complaint === 'cuts-out' && { comes: { with: 'water', idle: 0.08, provoked: 0.92 } }),
})

/** A spark may jump a break, at the price of most of itself, or leave it for metal. From memory. */
const broken = ({ random, complaint }: Draw, idle: number): Effect => ({
  series: Infinity,
  ...(happens(random, 0.3)
    ? { holdsOff: between(random, 0, 0.3) }
    : { gives: between(random, 0, 0.6) }),
  ...(complaint === 'cuts-out' && { comes: { with: 'shaking', idle, provoked: 0.9 } }),
})

export const ignitionCoil: Effects = {
  'secondary-open': ({ random }) => ({ series: Infinity, gives: between(random, 0, 0.35) }),
  'secondary-shorted': ({ random }) => {
    const bridged = between(random, 0.03, 0.5)
    return { turns: 1 - bridged, gives: Math.max(0, 1 - bridged * between(random, 2, 5)) }
  },
  'primary-open': () => ({ primarySeries: Infinity, gives: 0 }),
  'primary-shorted': ({ random }) => {
    const bridged = between(random, 0.1, 0.5)
    return { primaryTurns: 1 - bridged, gives: Math.max(0, 1 - bridged * between(random, 1.5, 3)) }
  },
  leaking: (draw) => leaking(draw),
  // Opens as the resin swells, or breaks down between its layers, which no meter sees.
  'fails-hot': ({ random }) => ({
    ...(happens(random, 0.5) && { series: Infinity }),
    gives: between(random, 0, 0.15),
    comes: heat(between(random, 45, 65)),
  }),
}

export const plugLead: Effects = { broken: (draw) => broken(draw, 0.25), leaking }

export const plugCap: Effects = {
  open: (draw) => ({
    ...broken(draw, 0.4),
    series: happens(draw.random, 0.75) ? Infinity : spread(draw.random, 1e6, 1),
    ...(happens(draw.random, visible.hidden) && { looks: 'burnt-or-cracked' }),
  }),
  loose: (draw) => ({ ...broken(draw, 0.4), looks: 'loose' }),
  leaking: (draw) => leaking(draw, happens(draw.random, 0.55) ? 'burnt-or-cracked' : undefined),
  'burnt-high': ({ random }) => ({
    series: spread(random, 150e3, 1.3),
    ...(happens(random, visible.hidden) && { looks: 'burnt-or-cracked' }),
  }),
}

export const sparkPlug: Effects = {
  fouled: ({ random }) => ({ gives: anyScale(random, 0.005, 0.6), looks: 'bad' }),
  cracked: ({ random }) => ({
    gives: anyScale(random, 0.005, 0.6),
    ...(happens(random, visible.half) && { looks: 'bad' }),
  }),
  bridged: () => ({ gives: 0, looks: 'bad' }),
  worn: ({ random }) => ({
    asks: between(random, 1.5, 4),
    ...(happens(random, visible.plain) && { looks: 'bad' }),
  }),
  'breaks-down-hot': ({ random }) => ({ gives: 0.05, comes: heat(between(random, 60, 90)) }),
}

export const igniter: Effects = {
  dead: () => ({ gives: 0 }),
  weak: ({ random }) => ({ gives: between(random, 0.15, 0.6) }),
  'fails-hot': ({ random }) => ({ gives: 0, comes: heat(between(random, 42, 58)) }),
  'cracked-joint': () => ({ gives: 0, comes: { with: 'shaking', idle: 0.05, provoked: 0.85 } }),
  'ignores-stop': () => ({}),
  'fires-early': () => ({}),
  'stays-limited': () => ({}),
}

export const ignitionModule: Effects = {
  dead: () => ({ gives: 0 }),
  'secondary-open': ({ random }) => ({ series: Infinity, gives: between(random, 0, 0.3) }),
  weak: ({ random }) => {
    const bridged = between(random, 0.03, 0.4)
    return { turns: 1 - bridged, gives: Math.max(0, 1 - bridged * between(random, 2, 5)) }
  },
  'fails-hot': ({ random }) => ({ gives: 0, comes: heat(between(random, 45, 62)) }),
  'cracked-joint': () => ({ gives: 0, comes: { with: 'shaking', idle: 0.05, provoked: 0.85 } }),
  'ignores-stop': () => ({}),
}

/** How a module sits: the magnet's path and its ground. */
export const moduleSeat: Effects = {
  'too-far': ({ random }) => ({
    gives: between(random, 0, 0.5),
    ...(happens(random, visible.plain) && { looks: 'wide' }),
  }),
  rusty: ({ random }) => ({
    gives: between(random, 0, 0.4),
    ...(happens(random, visible.plain) && { looks: 'rusty' }),
  }),
}

export const output: Effects = { dead: () => ({ gives: 0 }) }

export const flywheel: Effects = {
  'weak-magnets': ({ random }) => ({
    gives: between(random, 0.05, 0.4),
    looks: pick(random, ['weak', 'weak', 'loose']),
  }),
  faded: ({ random }) => ({
    gives: between(random, 0.2, 0.75),
    ...(happens(random, visible.plain) && { looks: 'weak' }),
  }),
}

export const cylinder: Effects = {
  'low-compression': ({ random, complaint }) => {
    if (complaint === 'hard-start-hot') return { gives: between(random, 0.7, 0.84) }
    // What still starts, after thirty pulls, has lost less than what does not.
    return { gives: between(random, complaint === 'hard-start-cold' ? 0.55 : 0.3, 0.8) }
  },
  // Its spark and its compression are good. That it does not fire is for the engine to know.
  'breathes-badly': ({ random }) => (happens(random, visible.plain) ? { looks: 'faulty' } : {}),
}
