import type { Secondary, Tower } from '../../../knowledge/schema/wiring/circuit.ts'
import { between, seeded, seedOf } from '../chance.ts'
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
  return made * keptByCoil(now, coil) * keptOnTheWay(now, secondary)
}

/** Turns that are shorted load what is left of them, and tell in the spark by their square. From memory. */
function keptByCoil(now: Moment, coil: string): number {
  const { series = 0, gives = 1 } = effectNow(now, coil)
  const secondary = effectNow(now, coil, 'secondary')
  const primary = Number.isFinite(series) ? gives ** 2 : 0
  return primary * (secondary.gives ?? 1) ** 2 * kept(now, coil, secondary.series)
}

/** Leads and caps: a coil with two towers sends its spark through both. */
function keptOnTheWay(now: Moment, { towers }: Secondary): number {
  const along = ({ lead, cap }: Tower): number =>
    kept(now, lead, effectNow(now, lead).series) *
    kept(now, cap, effectNow(now, cap).series) *
    kept(now, cap, effectNow(now, cap, 'joint').series)
  return towers.reduce((share, tower) => share * (tower === undefined ? 1 : along(tower)), 1)
}

/** Through what still conducts it goes; a break it jumps, each the same for good. */
function kept({ truth: { seed } }: Moment, part: string, ohms = 0): number {
  const through = 1 / (1 + ohms / halves.way)
  return ohms > halves.way
    ? Math.max(through, between(seeded(seedOf(seed, part, 'jumped')), 0, jumped))
    : through
}
