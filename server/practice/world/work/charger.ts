import { pairsOfLegs } from '../net/meet.ts'
import { effectNow } from '../net/moment.ts'
import { harness } from '../net/network.ts'
import { node } from '../node.ts'
import { ohmsBetween, type Resistor } from '../solve.ts'
import type { Working } from './elements.ts'
import { type Potentials, potentials, type Source } from './potentials.ts'
import { legVolts } from './windings.ts'

/** A of a good charge at 3000 rpm. From memory. */
const full = 7
/** V AC of two legs that just reach a battery: its 12.6 V and two diodes, by 1.35 of a three-phase rectifier. */
const reaches = 10.4
/** How many times that, where nothing holds it down. From memory. */
const unheld = 2
/** V that a box adds at most for what its sense wire loses. From memory. */
const mostMore = 4
/** A source of current: so many V behind as many Ω for each ampere. */
const stiff = 1e5

/** What a rectifier sends out: as much as holds its voltage, and no more than its winding gives. */
export function chargerAtWork(
  working: Working,
  network: readonly Resistor[],
  sources: readonly Source[],
): Source[] {
  const { now, power, rpm } = working
  if (power.charger === undefined || rpm === null) return []
  const { part, out, ground, sense } = power.charger
  const [from, to] = [node(ground, 'own'), node(out, 'own')]
  const { gives = 1 } = effectNow(now, part)
  const most = full * chargeShare(working, rpm) * Math.min(gives, unheld)
  const current: Source = { from, to, volts: most * stiff, ohms: stiff }
  // What no longer holds the voltage down gives all that the winding has.
  if (gives > 1) return [current]
  const limit = now.truth.good(part).holds
  let source: Source = { from, to, volts: limit, ohms: 0.01 }
  let volts: Potentials = potentials(network, [...sources, source])
  for (let i = 0; sense !== undefined && i < 4; i += 1) {
    const missing = limit - (volts(node(sense, 'own')) - volts(from))
    const more = Math.min(limit + mostMore, source.volts + missing)
    source = { ...source, volts: more }
    volts = potentials(network, [...sources, source])
  }
  const amperes = (source.volts - (volts(to) - volts(from))) / source.ohms
  // What it adds it takes from what a winding has to spare.
  const spared = most * (1 + ((unheld - 1) * (source.volts - limit)) / mostMore)
  return [amperes > spared ? { ...current, volts: spared * stiff } : source]
}

/**
 * Share of a full charge. What limits the current is the winding's own inductance, across which stands what the
 * battery leaves, √(E² − E₀²): at half the volts comes more than half. From pair to pair as much as each has.
 */
function chargeShare({ now, power }: Working, rpm: number): number {
  const { winding, plug } = power.charger ?? { winding: '', plug: '' }
  const net = harness(now)
  const places = pairsOfLegs(winding, plug, now.truth.circuit) ?? []
  const through = places.map(([from, to]) => ohmsBetween(net, from, to))
  const { ohms, peak, rpm: at } = now.truth.good(winding)
  const good = (peak * rpm) / at / Math.SQRT2
  const across = (volts: number) => Math.sqrt(Math.max(0, volts ** 2 - reaches ** 2))
  const open = legVolts(now, winding, rpm, through)
  const shares = open.map((volts, i) => {
    const extra = Math.max(0, (through[i] ?? Infinity) - ohms)
    return across(volts / (1 + extra / reactance)) / across(good)
  })
  const mean = shares.reduce((sum, each) => sum + Math.min(1, each), 0) / shares.length
  return mean * keptFromMetal({ now, power })
}

/** Ω of the winding's own inductance at speed, against which a joint in its way weighs. From memory. */
const reactance = 1.5

/** A path to metal lets a diode of each leg run through it. From memory. */
function keptFromMetal({ now, power }: Pick<Working, 'now' | 'power'>): number {
  const { winding = '' } = power.charger ?? {}
  const { wires = {}, legs = {} } = now.truth.circuit
  const plug = legs[winding]?.[0]
  const along = Object.entries(wires).filter(([, all]) => all.some(([from]) => from === plug))
  const leaks = [winding, ...along.map(([wire]) => wire)].map(
    (part) => effectNow(now, part).leak ?? Infinity,
  )
  const leak = Math.min(...leaks)
  return Number.isFinite(leak) ? (leak + 0.2) / (leak + 3) : 1
}
