import { anyScale, between, happens, spread } from '../../../../server/practice/world/chance.ts'
import { type Draw, type Effect, type Effects, visible } from '../effect.ts'

const seen = ({ random }: Draw, chance: number, looks: string) =>
  happens(random, chance) ? { looks } : {}

const inTheWet = ({ complaint }: Draw): Effect =>
  complaint === 'cuts-out' ? { comes: { with: 'water', idle: 0.15, provoked: 0.85 } } : {}

/** Closed it carries, open it stops: what does not close, and what does not open. From memory. */
export const interlock: Effects = {
  'does-not-close': (draw) => ({ series: Infinity, ...seen(draw, visible.half, 'stiff-or-wet') }),
  corroded: (draw) => ({
    series: anyScale(draw.random, 1, 1e7),
    ...inTheWet(draw),
    ...seen(draw, visible.half, 'stiff-or-wet'),
  }),
  'out-of-place': (draw) => ({ series: Infinity, ...seen(draw, visible.plain, 'out-of-place') }),
  'opens-on-bumps': (draw) => ({
    series: Infinity,
    comes: { with: 'shaking', idle: 0.12, provoked: 0.9 },
    ...seen(draw, visible.half, 'out-of-place'),
  }),
  'stuck-closed': (draw) => ({
    across: spread(draw.random, 0.5, 1),
    ...seen(draw, visible.half, 'stiff-or-wet'),
  }),
}

export const keySwitch: Effects = {
  'run-dead': () => ({ series: Infinity }),
  'run-burnt': ({ random, complaint }) => ({
    series: complaint === 'dies-hot' ? 200 : spread(random, 8, 1),
    ...(complaint === 'dies-hot' && {
      comes: { with: 'heat', idle: 0, provoked: 1, above: between(random, 40, 52) },
    }),
  }),
  'drops-at-start': () => ({}),
  'start-dead': ({ random }) => ({
    contacts: happens(random, 0.85) ? Infinity : spread(random, 30, 1),
  }),
  'lets-go': () => ({
    series: Infinity,
    comes: { with: 'shaking', idle: 0.08, provoked: 0.9 },
  }),
  'stuck-on': ({ random }) => ({ across: spread(random, 0.3, 1) }),
}

export const starterRelay: Effects = {
  'coil-open': () => ({ series: Infinity }),
  'burnt-contacts': ({ random }) => ({
    contacts: happens(random, 0.4) ? Infinity : anyScale(random, 0.05, 5),
  }),
  jammed: () => ({ contacts: Infinity }),
}

export const starter: Effects = {
  dead: () => ({ gives: 0 }),
  drags: ({ random }) => ({ gives: between(random, 0.25, 0.55) }),
  'spins-free': () => ({}),
}
