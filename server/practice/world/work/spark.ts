import type { Secondary, Tower } from '../../../knowledge/schema/wiring/circuit.ts'
import { between, happens, seeded, seedOf } from '../chance.ts'
import { effectNow, type Moment } from '../net/moment.ts'
import { partNamed, servedBy } from '../sheet.ts'
import { farEnd } from './far-end.ts'
import { pulseAt } from './pulse.ts'

/** The spark of a good machine on a modest pull comes of so many times the least pulse that its sheet asks for. From memory. */
const ample = 1.2
/** Ω in the wires of a coil that halve its spark, and in the lead and cap that it leaves by. From memory. */
const halves = { primary: 8, way: 20e3 }
/** A spark that jumps a break leaves at most so much of itself. From memory. */
const jumped = 0.35
/** Ω that are a break, and how often a spark leaves one for metal instead of jumping it. From memory. */
const gap = { from: 200e3, astray: 0.3 }

/**
 * The spark at the cap of an output: 0 is none, 1 that of a good machine on a modest pull. Null where the wiring
 * does not say what makes it.
 *
 * @param rpm that it is turned at
 */
export function sparkAt(now: Moment, output: string, rpm: number): number | null {
  const { circuit, machine } = now.truth
  const serves = (part: string) => {
    const outputs = servedBy(partNamed(machine, part))
    return outputs.length === 0 || outputs.includes(output)
  }
  const found = Object.entries(circuit.secondaries ?? {}).find(([, { towers }]) =>
    towers.some(({ cap }) => serves(cap)),
  )
  const [plug] = circuit.ends?.[found?.[0] ?? ''] ?? []
  if (found === undefined || plug === undefined) return null
  const [coil, secondary] = found
  const box = circuit.boxes?.find(({ outputs }) =>
    outputs.some(([own, a]) => farEnd(circuit, [own, a])[0] === plug),
  )
  if (box === undefined) return null
  const { peak, least, rpm: at } = now.truth.good(box.part)
  const pulse = pulseAt(now, box.part, plug, rpm, peak, rpm / at)
  if (pulse === null || least === 0) return null
  if (now.apart.has(plug)) return 0
  const made = pulse.volts / (ample * least) / (1 + pulse.ohms / halves.primary)
  return made * keptByCoil(now, coil) * keptOnTheWay(now, secondary, output)
}

/** Turns that are shorted load what is left of them, and tell in the spark by their square. From memory. */
function keptByCoil(now: Moment, coil: string): number {
  const { series = 0, gives = 1 } = effectNow(now, coil)
  const secondary = effectNow(now, coil, 'secondary')
  const primary = Number.isFinite(series) ? gives ** 2 : 0
  return primary * (secondary.gives ?? 1) ** 2 * kept(now, coil, secondary.series)
}

/**
 * Leads and caps: a coil with two towers sends its spark through both. What leaves one of them for metal is lost to
 * its own cylinder, and completes the way of the other.
 */
function keptOnTheWay(now: Moment, { towers }: Secondary, output: string): number {
  const [first, second] = towers
  const sitsAt = ({ cap }: Tower) => servedBy(partNamed(now.truth.machine, cap))[0] === output
  return [first, ...(second ? [second] : [])].reduce((share, tower) => {
    if (!goesAstray(now, tower)) return share * along(now, tower)
    return second === undefined || sitsAt(tower) ? 0 : share
  }, 1)
}

const stretches = (now: Moment, { lead, cap }: Tower): readonly (readonly [string, number])[] => [
  [lead, effectNow(now, lead).series ?? 0],
  [cap, effectNow(now, cap).series ?? 0],
  [cap, effectNow(now, cap, 'joint').series ?? 0],
]

const along = (now: Moment, tower: Tower): number =>
  stretches(now, tower).reduce((share, [part, ohms]) => share * kept(now, part, ohms), 1)

const goesAstray = (now: Moment, tower: Tower): boolean =>
  stretches(now, tower).some(
    ([part, ohms]) =>
      ohms > gap.from && happens(seeded(seedOf(now.truth.seed, part, 'astray')), gap.astray),
  )

/** Through what still conducts it goes; a break it jumps, each the same for good. */
function kept({ truth: { seed } }: Moment, part: string, ohms = 0): number {
  const through = 1 / (1 + ohms / halves.way)
  return ohms > halves.way
    ? Math.max(through, between(seeded(seedOf(seed, part, 'jumped')), 0, jumped))
    : through
}
