import { effectNow } from '../net/moment.ts'
import { node } from '../node.ts'
import type { Resistor } from '../solve.ts'
import { chargerAtWork } from './charger.ts'
import { elements, good, type Working } from './elements.ts'
import { alternating, held } from './lights.ts'
import { nodeOf } from './place.ts'
import { type Potentials, potentials, type Source } from './potentials.ts'

/** A that blow a fuse, V at which a relay pulls in. From memory. */
const melts = 15
const pullsIn = 6.5

/** V of a rested battery, and of one that is being charged; Ω inside of each. From memory. */
const rested = { volts: 12.6, ohms: 0.015 }
const charging = { volts: 12.7, ohms: 0.25 }

/** What conducts at work and what makes a voltage, and V of all places against the metal of the engine. */
export interface AtWork {
  readonly network: readonly Resistor[]
  readonly sources: readonly Source[]
  readonly volts: Potentials
}

/** A machine at work, its fuses, relay, regulator and charger as they settle; AC as rms, as if all were in phase. */
export function atWork(working: Working): AtWork {
  const { fuses = [] } = working.power
  let blown = new Set<string>()
  for (;;) {
    const all = settled(working, blown)
    const { volts, network } = all
    const more = fuses.filter(
      (fuse) => !blown.has(fuse) && ampsThrough(working, fuse, network, volts) > melts,
    )
    if (more.length === 0) return all
    blown = new Set([...blown, ...more])
  }
}

/** With these fuses blown. */
function settled(working: Working, blown: ReadonlySet<string>): AtWork {
  const network = elements(working, blown)
  const sources = [...battery(working), ...alternating(working)]
  const closed = [...network, ...relay(working, potentials(network, sources))]
  const regulated = [...sources, ...held(working, closed, sources)]
  const all = [...regulated, ...chargerAtWork(working, closed, regulated)]
  return { network: closed, sources: all, volts: potentials(closed, all) }
}

function battery({ now, power, rpm }: Working): Source[] {
  if (power.battery === undefined) return []
  const { part, plus, minus } = power.battery
  const { gives = 1 } = effectNow(now, part)
  const { volts, ohms } = rpm === null ? rested : charging
  // What is tired loses its inside by the square. From memory.
  return [
    { from: nodeOf(minus), to: nodeOf(plus), volts, ohms: rpm === null ? ohms / gives ** 2 : ohms },
  ]
}

/** Its contacts, where it is fed through its plug or by itself. */
function relay({ now, power }: Working, volts: Potentials): Resistor[] {
  if (power.relay === undefined) return []
  const {
    part,
    at: [from, to],
  } = power.relay
  const [plug = '', a = 0, b = 0] = now.truth.circuit.ends?.[part] ?? []
  const across = volts(node([plug, a], 'own')) - volts(node([plug, b], 'own'))
  const { series: winding = 0 } = effectNow(now, part)
  const isFed = Number.isFinite(winding) && (now.worked.has(part) || across >= pullsIn)
  const { series = 0 } = effectNow(now, part, 'contacts')
  return isFed ? [[nodeOf(from), nodeOf(to), good + series]] : []
}

function ampsThrough(
  { now, power }: Working,
  fuse: string,
  network: readonly Resistor[],
  volts: Potentials,
): number {
  const span = power.spans?.[fuse]
  if (span !== undefined) {
    const { series = 0 } = effectNow(now, fuse)
    return Math.abs(volts(nodeOf(span[0])) - volts(nodeOf(span[1]))) / (good + series)
  }
  const { inLine = {}, wires = {} } = now.truth.circuit
  const starts = Object.entries(inLine)
    .filter(([, name]) => name === fuse)
    .flatMap(([wire]) => (wires[wire] ?? []).map(([plug, pin]) => node([plug, pin], 'harness')))
  const flows = network.filter(([a, b]) => starts.includes(a) && !b.endsWith('own'))
  return flows.reduce((sum, [a, b, ohms]) => sum + Math.abs(volts(a) - volts(b)) / ohms, 0)
}
