import { ground, node } from '../../../../server/practice/world/node.ts'
import { partsIn } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import { terminal } from '../net/points.ts'
import { harness } from '../network.ts'
import { type Now, ohmsOf } from '../now.ts'
import { seated } from '../site.ts'
import { cutOff, secondaryPeak, shortedPrimary } from './induction.ts'
import { keptAtWork, magnets } from './volts.ts'

/**
 * The winding behind the flywheel and the coil on the frame: H of each, V peak at 400 rpm, waves a turn, turns of the
 * secondary and F across it. Typical of the kind, from memory.
 */
const winding = { henry: 4e-3, ohms: 1.45, peak: 4.5, waves: 3 }
const coil = { henry: 4e-3, ohms: 1.1, turns: 70, secondaryFarad: 60e-12 }
const goodFarad = 0.23e-6
/** F of wires and terminals, where no condenser is left. From memory. */
const stray = 2e-9
/** A good machine gives somewhat more than a spark of 1 at a modest pull, rpm. */
const ample = { spark: 1.2, rpm: 400 }
/** Points of a tired spring bounce above this, rpm. From memory. */
const bouncesAbove = 3500
/** Ω to ground beside the points that leave no spark worth the name. */
export const stopsBelow = 25

/** What happens at the points as they open. */
export interface Opening {
  /** A that they carry until then, and those that are cut off. */
  readonly amps: number
  readonly cut: number
  readonly hasCondenser: boolean
  /** Ω to ground beside them. */
  readonly leak: number
}

export function opening(now: Now, rpm: number): Opening {
  const part = (role: string) => partsIn(now.site.world.machine, role)[0]!.id
  const [points, condenser] = [part('points'), part('condenser')]
  const { series = 0 } = now.effect(points)
  const amps = ampsAt(now, part('primary'), rpm, series)
  const hasCondenser = farad(now, condenser) > 0.2 * goodFarad
  const opens = !now.has(points, 'closed-up', 'insulator-cracked')
  const cut = opens ? cutOff(amps, hasCondenser) * atItsBest(now, points, rpm) : 0
  return { amps, cut, hasCondenser, leak: leakBeside(now, condenser) }
}

/** The spark that the coil sends into its lead; 1 is that of a good one at a modest pull. */
export function pointsSpark(now: Now, output: string, rpm: number): number {
  const { cut, leak } = opening(now, rpm)
  const way = ohmsToCoil(now, output)
  if (cut === 0 || !Number.isFinite(way)) return 0
  const condenser = partsIn(now.site.world.machine, 'condenser')[0]!.id
  const volts = secondaryPeak(both, cut, { farad: farad(now, condenser), leak })
  return Math.min(1.8, (ample.spark * volts) / goodVolts / (1 + way / impedance))
}

/** As the points open, winding and coil lie side by side across them. */
const both = {
  ...coil,
  henry: (winding.henry * coil.henry) / (winding.henry + coil.henry),
  ohms: (winding.ohms + coil.ohms) / 4,
}
const impedance = Math.sqrt(both.henry / goodFarad)

/** A at the top of the wave of a winding that closed points short-circuit. */
function ampsShorted(henry: number, ohms: number, peak: number, rpm: number): number {
  if (!Number.isFinite(ohms)) return 0
  const hz = (rpm / 60) * winding.waves
  const omega = 2 * Math.PI * hz
  const top = (Math.PI / 2 + Math.atan2(omega * henry, ohms)) / omega
  return shortedPrimary({ henry, ohms }, { peak, hz }, top)
}

const goodAmps = ampsShorted(winding.henry, winding.ohms, winding.peak, ample.rpm)
const goodVolts = secondaryPeak(both, goodAmps, { farad: goodFarad })

function ampsAt(now: Now, primary: string, rpm: number, inPoints: number): number {
  const { series = 0, turns = 1, gives = 1, ...path } = now.effect(primary)
  const ohms = ohmsOf(now, primary)
  const kept = keptAtWork(path, ohms, winding.peak) * gives
  const peak = (winding.peak * magnets(now) * kept * rpm) / ample.rpm
  return ampsShorted(winding.henry * turns ** 2, ohms + series + inPoints, peak, rpm)
}

/** Set off the mark they cut off less than there was, and so they do where they open too little or bounce. */
function atItsBest(now: Now, points: string, rpm: number): number {
  if (now.has(points, 'weak-spring') && rpm < bouncesAbove) return 1
  return now.effect(points).gives ?? 1
}

/** F across the points, with a good one that is clipped beside it. */
function farad(now: Now, condenser: string): number {
  const own = now.good(condenser).microfarad * 1e-6 * (now.effect(condenser).gives ?? 1)
  return Math.max(stray, own) + (now.site.doing.besideIt ? goodFarad : 0)
}

/** Ω from the terminal to metal, the winding and the coil left out: what is chafed, leaks, or is switched off. */
function leakBeside(now: Now, condenser: string): number {
  const open: Now = {
    ...now,
    site: { ...now.site, doing: { ...now.site.doing, pointsOpen: true } },
  }
  const beside = harness(open).filter(([a, b]) => ![a, b].some((name) => / tap$/.test(name)))
  const { leak = Infinity } = now.effect(condenser)
  return 1 / (1 / ohmsBetween(beside, terminal, ground) + 1 / leak)
}

/** Ω of the way to the coil and back, beyond its own. */
function ohmsToCoil(now: Now, output: string): number {
  const place = seated(now.site, 'coil', output)
  const [plug, a, b] = now.site.world.circuit.ends[place]!
  const net = harness(now)
  const there = ohmsBetween(
    net.filter(([from, to]) => from !== ground && to !== ground),
    terminal,
    node([plug, a], 'own'),
  )
  const behindIt = net.filter(([from, to]) => ![from, to].includes(`${place} tap`))
  return there + ohmsBetween(behindIt, node([plug, b], 'own'), ground)
}
