import {
  anyScale,
  between,
  happens,
  pick,
  spread,
} from '../../../../server/practice/world/chance.ts'
import { type Comes, type Draw, type Effect, type Effects, visible } from '../effect.ts'

/** From memory: how often a cracked joint is apart, left alone and shaken. The engine starts and idles with it. */
const shaking = { with: 'shaking', idle: 0.08, provoked: 0.9 } as const

/** In a complaint of bumps or wet it comes and goes; in any other it is there to stay. */
const onBumps = ({ complaint }: Draw) =>
  ['cuts-out', 'starts-then-dies'].includes(complaint) ? { comes: shaking } : {}

const heat = (above: number): Comes => ({ with: 'heat', idle: 0, provoked: 1, above })

/**
 * A crack that opens with heat, found while it is dead: half of them hold open cold as well, the others
 * are closed at room temperature. From memory.
 */
const heatOpen = ({ random }: Draw): Effect =>
  happens(random, 0.5)
    ? { series: Infinity, comes: { with: 'shaking', idle: 0.8, provoked: 0.9 } }
    : { series: Infinity, comes: heat(between(random, 30, 60)) }

/** Reads well cold: opens somewhere between what a hand bears and what the winding reaches. From memory. */
const failsHot = ({ random }: Draw): Effect => ({
  series: Infinity,
  comes: heat(between(random, 50, 75)),
})

/** Burnt or rubbed insulation: from wire on iron to some kΩ. From memory. */
const grounded = ({ random }: Draw): Effect => ({
  leak: anyScale(random, 0.02, 5000),
  at: random(),
})

/**
 * Ohms fall with the turns that are bridged. The volts fall further: the bridged turns are a loaded
 * winding of their own and brake the flux. Common practice: up to half as much again.
 */
function shortedTurns({ random }: Draw): Effect {
  const bridged = between(random, 0.05, 0.7)
  return { turns: 1 - bridged, gives: Math.max(0.03, 1 - bridged * between(random, 1, 1.7)) }
}

export const winding: Effects = {
  open: () => ({ series: Infinity }),
  'bad-joint': (draw) => ({
    series: anyScale(draw.random, 0.2 * draw.ohms, 1000 * draw.ohms),
    ...onBumps(draw),
  }),
  'heat-open': heatOpen,
  grounded,
  'shorted-turns': shortedTurns,
  'fails-hot': failsHot,
  'leaks-under-load': ({ random, ohms, volts, complaint }) => ({
    breaksDownAt: volts * between(random, 0.3, 0.85),
    leak: ohms * anyScale(random, 0.02, 2),
    at: between(random, 0, 0.4),
    ...(['dies-hot', 'hard-start-hot'].includes(complaint) && {
      comes: heat(between(random, 50, 75)),
    }),
  }),
}

export const pickup: Effects = {
  open: () => ({ series: Infinity }),
  'heat-open': heatOpen,
  weak: ({ random }) => ({
    gives: anyScale(random, 0.01, 0.5),
    looks: pick(random, ['wrong', 'wrong', 'wrong', 'dirty', 'right']),
  }),
  grounded,
  'fails-hot': failsHot,
  reversed: ({ random }) => (happens(random, visible.plain) ? { looks: 'crossed' } : {}),
  shifted: ({ random }) => (happens(random, visible.plain) ? { looks: 'moved' } : {}),
  loose: ({ random }) => ({ gives: anyScale(random, 0.005, 0.6), comes: shaking, looks: 'wrong' }),
}

/** The three legs are alike until one of them fails. */
export const threePhaseWinding: Effects = {
  'leg-open': ({ random }) => ({ series: Infinity, leg: pick(random, [0, 1, 2]) }),
  'bad-joint': ({ random, ohms }) => ({
    series: spread(random, 2 * ohms, 0.9),
    leg: pick(random, [0, 1, 2]),
  }),
  grounded: (draw) => ({ ...grounded(draw), leg: pick(draw.random, [0, 1, 2]) }),
  'shorted-turns': (draw) => ({ ...shortedTurns(draw), leg: pick(draw.random, [0, 1, 2]) }),
}

export const injector: Effects = {
  open: () => ({ series: Infinity }),
  shorted: ({ random }) => ({ turns: between(random, 0.02, 0.6), gives: 0 }),
  stuck: () => ({ gives: 0 }),
}

export const pump: Effects = {
  open: () => ({ series: Infinity }),
  // A motor that cannot turn makes no counter-voltage: it strains, or lies still.
  seized: () => ({ gives: 0 }),
  'fails-hot': ({ random }) => ({ gives: 0, comes: heat(between(random, 35, 45)) }),
}
