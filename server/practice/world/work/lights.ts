import { effectNow } from '../net/moment.ts'
import { node } from '../node.ts'
import type { Resistor } from '../solve.ts'
import { allLoads, hot, type Working } from './elements.ts'
import { potentials, type Source } from './potentials.ts'
import { emf, windingAtWork } from './windings.ts'

/** rpm that windings are matched to their loads at, and how far above what a regulator holds. From memory. */
const matchedAt = 3000
const spare = 1.35

/** Windings that feed loads by themselves, at their speed. */
export function alternating(working: Working): Source[] {
  const { now, power, rpm } = working
  if (rpm === null) return []
  return Object.keys(power.windings ?? {}).flatMap((part) =>
    windingAtWork(now, part, emf(now, part, rpm) / Math.SQRT2, reactance(working, part, rpm)),
  )
}

/** It grows with speed as the voltage does, so that the current limits itself. */
function reactance({ now, power }: Working, part: string, rpm: number): number {
  const { peak, rpm: at } = now.truth.good(part)
  const open = (peak * matchedAt) / at / Math.SQRT2
  const lifts = power.windings?.[part]?.lifts
  const wanted = lifts === undefined ? spare * holds(now, power) : hot(lifts)
  return allLoads(power) * Math.max(0.2, open / wanted - 1) * (rpm / matchedAt)
}

const holds = (now: Working['now'], { regulator }: Working['power']): number =>
  regulator === undefined ? Infinity : now.truth.good(regulator.part).holds

/** The shunt of a regulator, where there is more than it lets stand. */
export function held(
  { now, power: { regulator }, rpm }: Working,
  network: readonly Resistor[],
  sources: readonly Source[],
): Source[] {
  if (regulator === undefined || rpm === null || effectNow(now, regulator.part).gives === 0)
    return []
  const [from, to] = [node(regulator.ground, 'own'), node(regulator.in, 'own')]
  const volts = potentials(network, sources)
  const limit = now.truth.good(regulator.part).holds
  if (volts(to) - volts(from) <= limit) return []
  return [{ from, to, volts: limit, ohms: 0.005 }]
}
