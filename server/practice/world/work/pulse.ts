import { numbered } from '../../../diagnosis/model/named.ts'
import type { Box } from '../../../knowledge/schema/wiring/circuit.ts'
import { effectNow, type Moment } from '../net/moment.ts'
import { harness } from '../net/network.ts'
import { ground, node } from '../node.ts'
import { ohmsBetween } from '../solve.ts'
import { farEnd, partAt } from './far-end.ts'
import { arriving, charged } from './input.ts'
import { atWork } from './volts.ts'

/** Ω to metal below which a stop wire, and above which a run wire, keeps a box silent. From memory. */
const stopsBelow = 1500
const runsBelow = 2500
/** Ω in the ground of a box that halve its pulse. From memory. */
const groundHalves = 20
/**
 * It triggers at this share of what a good pickup gives on a modest pull, and late up to so many times that: the gate of
 * a thyristor asks for some 0.7 V, of the 2 or 3 V of a good one. From memory.
 */
const triggersAt = 0.3
const late = { until: 1.4, gives: 0.55 }
/** Below this share of a good charge it does not fire. V that a fed box needs, and V that are plenty. From memory. */
const leastCharge = 0.15
const fed = { least: 7, none: 4, plenty: 9 }

/** V peak at a coil plug, nothing drawing from it, and the Ω that it comes through. */
export interface Pulse {
  readonly volts: number
  readonly ohms: number
}

/**
 * The pulse of a box at the plug of a coil.
 *
 * @param asked V that a good one gives at this speed
 * @param plug of the coil
 * @param speed that it is turned at, as a share of the one that `asked` holds at
 */
export function pulseAt(
  now: Moment,
  part: string,
  plug: string,
  rpm: number,
  asked: number,
  speed: number,
): Pulse | null {
  const { circuit } = now.truth
  const box = circuit.boxes?.find((each) => each.part === part)
  const k = box?.outputs.findIndex(([own, a]) => farEnd(circuit, [own, a])[0] === plug) ?? -1
  if (box === undefined || k < 0) return null
  const [own, ...pins] = numbered(box.outputs, k)
  const ohms = pins.reduce((sum, pin) => {
    const [to, at] = farEnd(circuit, [own, pin])
    return sum + ohmsBetween(harness(now), node([own, pin], 'own'), node([to, at], 'harness'))
  }, 0)
  if (!Number.isFinite(ohms) || isSilent(now, box)) return { volts: 0, ohms: 5 }
  const { gives = 1 } = effectNow(now, part)
  const toMetal = ohmsBetween(harness(now), node(box.ground, 'own'), ground)
  const kept = gives / (1 + toMetal / groundHalves)
  const leak = leakBeyond(now, own, pins)
  const share = supply(now, box, rpm) * triggered(now, box, k, rpm) * kept * leak
  return { volts: asked * share * (isFed(now, box) ? 1 : speed), ohms: 5 + ohms }
}

function isSilent(now: Moment, { stop, run }: Box): boolean {
  const toMetal = (pin: readonly [string, number]) =>
    ohmsBetween(harness(now), node(pin, 'own'), ground)
  return (
    (stop !== undefined && toMetal(stop) < stopsBelow) ||
    (run !== undefined && toMetal(run) > runsBelow)
  )
}

/** A battery feeds it, and no winding: what it has does not grow with speed. */
const isFed = ({ truth: { circuit } }: Moment, { inputs: [first] }: Box): boolean =>
  first !== undefined && partAt(circuit, first) === undefined

/** What it has to give, as a share of a good one: from its windings, or from a battery. */
function supply(now: Moment, box: Box, rpm: number): number {
  const [first] = box.inputs
  const { power } = now.truth.circuit
  if (first !== undefined && power !== undefined && isFed(now, box)) {
    const probes = [node([first[0], first[1]], 'own'), node([first[0], first[2]], 'own')] as const
    const { volts } = atWork({
      now: { ...now, key: 'start' },
      power,
      rpm: null,
      property: '',
      probes,
    })
    const at = volts(probes[0]) - volts(probes[1])
    return at < fed.least ? 0 : Math.min(1, (at - fed.none) / (fed.plenty - fed.none))
  }
  const share = charged(now, box, rpm)
  return share < leastCharge ? 0 : Math.min(1.15, share)
}

/** Below its threshold it does not trigger; just above it, late. */
function triggered(now: Moment, box: Box, k: number, rpm: number): number {
  const triggers = box.inputs.slice(box.charges)
  const pair = triggers[k] ?? triggers[0]
  const part = pair && partAt(now.truth.circuit, pair)
  if (pair === undefined || part === undefined) return 1
  const threshold = triggersAt * now.truth.good(part).peak
  const volts = arriving(now, box, pair, 'trigger', rpm)
  if (volts < threshold) return 0
  return volts < late.until * threshold ? late.gives : 1
}

/** What a wire to the coil leaves of it that touches metal on its way. */
function leakBeyond(now: Moment, plug: string, pins: readonly number[]): number {
  const { wires = {} } = now.truth.circuit
  const along = Object.entries(wires).filter(([, all]) =>
    all.some(([from, a]) => from === plug && pins.includes(a)),
  )
  const leak = Math.min(...along.map(([part]) => effectNow(now, part).leak ?? Infinity))
  return Number.isFinite(leak) ? leak / (leak + 5) : 1
}
