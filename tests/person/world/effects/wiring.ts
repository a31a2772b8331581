import {
  anyScale,
  between,
  happens,
  pick,
  spread,
} from '../../../../server/practice/world/chance.ts'
import { type Comes, type Draw, type Effect, type Effects, visible } from '../effect.ts'

/** How often it is there, left alone and provoked. The engine starts and idles with it. From memory. */
const shaking: Comes = { with: 'shaking', idle: 0.08, provoked: 0.9 }
const water: Comes = { with: 'water', idle: 0.15, provoked: 0.85 }

const heat = (above: number): Comes => ({ with: 'heat', idle: 0, provoked: 1, above })
/** Where heat is what one complains of it is there hot alone. */
const whenHot = ({ complaint, random }: Draw) =>
  complaint === 'dies-hot' ? { comes: heat(between(random, 40, 52)) } : {}
const onBumps = ({ complaint }: Draw) =>
  ['cuts-out', 'lamps-dim', 'starts-then-dies'].includes(complaint) ? { comes: shaking } : {}
const inTheWet = ({ complaint }: Draw) => (complaint === 'cuts-out' ? { comes: water } : {})
const seen = ({ random }: Draw, chance: number, looks: string) =>
  happens(random, chance) ? { looks } : {}

/** Green pins: from some ohms to nothing that conducts. From memory. */
const corroded = (draw: Draw): Effect => ({
  series: anyScale(draw.random, 1, 1e7),
  ...inTheWet(draw),
  ...seen(draw, visible.plain, 'corroded'),
})

export const wiring: Effects = {
  open: (draw) => ({ series: Infinity, ...seen(draw, visible.hidden, 'pushed-back') }),
  corroded,
  grounded: (draw) => ({
    leak: anyScale(draw.random, 0.02, 50),
    at: 0,
    ...seen(draw, visible.half, 'chafed'),
  }),
  loose: (draw) => ({
    series: Infinity,
    comes: shaking,
    ...seen(draw, visible.half, 'pushed-back'),
  }),
  rubs: (draw) => ({
    leak: spread(draw.random, 0.3, 1.2),
    at: 0,
    comes: shaking,
    ...seen(draw, visible.half, 'chafed'),
  }),
  'melts-hot': (draw) => ({
    leak: spread(draw.random, 0.3, 1.2),
    at: 0,
    comes: heat(between(draw.random, 42, 58)),
    ...seen(draw, visible.half, happens(draw.random, 0.6) ? 'bare' : 'chafed'),
  }),
}

/** Loose or left off: no contact at all, or some tens of ohms. Of a battery cable: some hundredths of an ohm. */
const looseGround = (draw: Draw): Effect => ({
  series:
    draw.role === 'battery-ground'
      ? spread(draw.random, 0.04, 0.9)
      : happens(draw.random, 0.65)
        ? Infinity
        : spread(draw.random, 20, 1.5),
  ...onBumps(draw),
  ...seen(draw, visible.plain, 'loose'),
})

const rustyGround = (draw: Draw): Effect => ({
  series:
    draw.role === 'battery-ground'
      ? spread(draw.random, 0.03, 1.2)
      : anyScale(draw.random, 0.5, 1e4),
  ...inTheWet(draw),
  ...seen(draw, visible.plain, 'corroded'),
})

export const groundStrap: Effects = { loose: looseGround, corroded: rustyGround }

export const groundPin: Effects = {
  'pushed-back': (draw) => ({
    series: happens(draw.random, 0.4) ? Infinity : spread(draw.random, 5, 1.2),
    ...seen(draw, visible.plain, 'pushed-back'),
  }),
  corroded: (draw) => ({
    series: spread(draw.random, 2, 1.2),
    ...seen(draw, visible.plain, 'corroded'),
  }),
}

/** Water that has stood in a plug: green pins that no longer carry, or salt water from pin to pin. From memory. */
export const sharedPlug: Effects = {
  wet: (draw) => ({
    ...(happens(draw.random, 0.5)
      ? { series: spread(draw.random, 20e3, 1.2) }
      : { across: spread(draw.random, 60, 1) }),
    leak: spread(draw.random, 20e3, 1.5),
    ...inTheWet(draw),
    ...seen(draw, visible.plain, 'wet-or-green'),
  }),
}

/** A stop circuit is closed through a few ohms as a rule; water in a switch is some hundreds. From memory. */
export const stopSwitch: Effects = {
  'stuck-closed': (draw) => ({
    across: spread(draw.random, 0.6, 1.2),
    ...seen(draw, visible.half, 'stiff-or-wet'),
  }),
  'out-of-place': (draw) => ({
    across: spread(draw.random, 0.4, 0.8),
    ...seen(draw, visible.plain, 'out-of-place'),
  }),
  'does-not-close': (draw) => ({
    series: happens(draw.random, 0.85) ? Infinity : spread(draw.random, 3e4, 1),
    ...seen(draw, visible.half, pick(draw.random, ['stiff-or-wet', 'out-of-place'])),
  }),
  'closes-on-bumps': (draw) => ({
    across: spread(draw.random, 0.5, 1),
    comes: { with: 'shaking', idle: 0.12, provoked: 0.9 },
    ...seen(draw, visible.half, 'out-of-place'),
  }),
  'leaks-when-wet': (draw) => ({
    across: spread(draw.random, 400, 0.9),
    comes: { with: 'water', idle: 0.2, provoked: 0.9 },
    ...seen(draw, visible.half, 'stiff-or-wet'),
  }),
}

export const lampSwitch: Effects = {
  open: () => ({ series: Infinity }),
  'burnt-contacts': ({ random, complaint }) => ({
    series: happens(random, 0.2) ? Infinity : spread(random, 2, 1.2),
    ...(complaint === 'lamps-dim' && { comes: { with: 'shaking', idle: 0.55, provoked: 0.95 } }),
  }),
}

export const lamp: Effects = {
  burnt: () => ({ series: Infinity, looks: 'burnt' }),
  'burnt-in-turn': () => ({ series: Infinity, looks: 'burnt' }),
  'bad-holder': ({ random }) => ({
    series: Infinity,
    ...(happens(random, visible.plain) && { looks: 'dirty' }),
  }),
  'loose-holder': () => ({
    series: Infinity,
    comes: { with: 'shaking', idle: 0.3, provoked: 0.95 },
  }),
}

export const fuse: Effects = {
  blown: () => ({ series: Infinity, looks: 'blown' }),
  'too-small': () => ({ looks: 'too-small' }),
  'burnt-holder': (draw) => ({
    series: draw.complaint === 'dies-hot' ? 200 : spread(draw.random, 0.3, 1.2),
    ...whenHot(draw),
    ...seen(draw, visible.plain, 'burnt-holder'),
  }),
}

export const batteryLead: Effects = {
  loose: (draw) => ({
    series: spread(draw.random, 0.05, 1),
    ...seen(draw, visible.plain, 'loose'),
  }),
  corroded: (draw) => ({
    series: spread(draw.random, 0.05, 1),
    ...seen(draw, visible.plain, 'corroded'),
  }),
}

export const battery: Effects = {
  flat: ({ random }) => ({ gives: between(random, 0.2, 0.6) }),
  tired: (draw) => ({
    gives: between(draw.random, 0.2, 0.6),
    ...seen(draw, visible.hidden, 'swollen-or-dry'),
  }),
  'dead-cell': (draw) => ({
    gives: between(draw.random, 0.05, 0.4),
    ...seen(draw, visible.hidden, 'swollen-or-dry'),
  }),
}
