import { anyScale, between, happens } from '../../../../server/practice/world/chance.ts'
import { type Comes, type Draw, type Effects, visible } from '../effect.ts'
import { winding } from './windings.ts'

const heat = (above: number): Comes => ({ with: 'heat', idle: 0, provoked: 1, above })
const shaking: Comes = { with: 'shaking', idle: 0.08, provoked: 0.9 }
const onBumps = ({ complaint }: Draw) => (complaint === 'cuts-out' ? { comes: shaking } : {})
const seen = ({ random }: Draw, chance: number, looks: string) =>
  happens(random, chance) ? { looks } : {}

/** One end on the core: a path to it bridges part of the winding, and the screw there can let go. */
export const groundedWinding: Effects = {
  open: winding.open!,
  'bad-joint': winding['bad-joint']!,
  grounded: ({ random }) => ({ leak: anyScale(random, 0.02, 0.5), at: between(random, 0, 0.8) }),
  'shorted-turns': winding['shorted-turns']!,
  'fails-hot': winding['fails-hot']!,
  'ground-lost': (draw) => ({
    series: happens(draw.random, 0.65) ? Infinity : anyScale(draw.random, 2, 1e3),
    ...onBumps(draw),
    ...seen(draw, visible.plain, 'loose-or-rusty'),
  }),
}

export const points: Effects = {
  oiled: (draw) => ({
    series: anyScale(draw.random, 1, 1e4),
    ...seen(draw, visible.plain, 'oiled'),
  }),
  burnt: (draw) => ({
    series: anyScale(draw.random, 0.5, 100),
    ...seen(draw, visible.plain, 'burnt'),
  }),
  'closed-up': () => ({ looks: 'closed-up' }),
  'heel-worn': ({ random }) => ({ gives: between(random, 0.2, 0.85), looks: 'closed-up' }),
  'opens-early': ({ random }) => ({
    gives: between(random, 0.2, 0.85),
    ...(happens(random, 0.6) && { looks: 'wide' }),
  }),
  'opens-late': ({ random }) => ({ gives: between(random, 0.2, 0.85) }),
  'stuck-open': () => ({ series: Infinity, looks: 'arm-bad' }),
  'weak-spring': (draw) => ({
    gives: between(draw.random, 0.1, 0.6),
    ...seen(draw, visible.half, 'arm-bad'),
  }),
  'insulator-cracked': (draw) => ({
    leak: anyScale(draw.random, 0.02, 1),
    ...seen(draw, visible.hidden, 'arm-bad'),
  }),
}

/** `gives` is the share of its capacitance that is left. */
export const condenser: Effects = {
  open: (draw) => ({
    gives: between(draw.random, 0, 0.08),
    ...seen(draw, visible.hidden, 'loose'),
  }),
  loose: (draw) => ({ gives: 0, comes: shaking, ...seen(draw, visible.plain, 'loose') }),
  leaky: ({ random }) => ({
    leak: anyScale(random, 5, 400),
    ...(happens(random, 0.3) && { breaksDownAt: 100 }),
  }),
  shorted: ({ random }) => ({ leak: anyScale(random, 0.02, 3) }),
  'fails-hot': ({ random }) => ({
    leak: anyScale(random, 1, 40),
    comes: heat(between(random, 48, 66)),
    ...(happens(random, 0.15) && { breaksDownAt: 100 }),
  }),
}

export const pointsLead: Effects = {
  open: (draw) => ({ series: Infinity, ...seen(draw, visible.plain, 'broken') }),
  grounded: (draw) => ({
    leak: anyScale(draw.random, 0.02, 3),
    ...seen(draw, visible.plain, 'chafed'),
  }),
  rubs: (draw) => ({
    leak: anyScale(draw.random, 0.02, 3),
    comes: shaking,
    ...seen(draw, visible.plain, 'chafed'),
  }),
}
