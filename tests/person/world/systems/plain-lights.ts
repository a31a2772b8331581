import { ground, node } from '../../../../server/practice/world/node.ts'
import { partsIn } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import { harness } from '../network.ts'
import type { Now } from '../now.ts'
import type { Lights } from './lights.ts'
import { emf, keptAtWork } from './volts.ts'

/** Hot, Ω: the lamp on the plug, 35 W at 12 V, and any other, 5 W. Common practice. */
const hotOhms = { plugged: 4.1, other: 29 }
/** All of them side by side, and V that the winding brings them at 3000 rpm. */
const allLamps = 3.6
const lit = 12.3

/** Lamps that hang on a winding matched to them, with one end on its core and nothing that regulates it. */
export function plainLights(now: Now, rpm: number): Lights {
  const { world, standing } = now.site
  const lamps = partsIn(world.machine, 'lamp').map(({ id }) => id)
  const plugged = lamps.find((id) => world.circuit.ends[id] !== undefined)!
  const [plug, hot, cold] = world.circuit.ends[plugged]!
  const back = ohmsBetween(harness(now), node([plug, cold], 'harness'), ground)
  const holds = (id: string) =>
    (id === plugged && standing.goodLamp) ||
    (!standing.lampsOut && (now.effect(id).series ?? 0) < 20)
  const joined = (id: string) => id !== plugged || !standing.apart.has(plug)
  const burning = lamps.filter((id) => holds(id) && joined(id) && Number.isFinite(back))
  const siemens = burning.map((id) => 1 / hotOhms[id === plugged ? 'plugged' : 'other'])
  const burns = burning.length > 0
  const way = ohmsTo(now, [plug, hot])
  const open = openVolts(now, rpm)
  // Where nothing draws, the meter's own megohms are the load, and a bad joint loses nothing.
  const load = burns ? 1 / siemens.reduce((sum, each) => sum + each) : 1e7
  const behind = way + (burns ? reactance(now, rpm) : 0)
  const amperes = Number.isFinite(way + back) ? open / (behind + load + back) : 0
  const alone = Number.isFinite(way) ? open : 0
  return {
    atRegulator: 0,
    atRegulatorToMetal: 0,
    regulatorDrop: 0,
    atLamp: amperes * load,
    atLampToMetal: Number.isFinite(back) ? amperes * (load + back) : alone,
    lamps: new Map(lamps.map((id) => [id, burning.includes(id) ? amperes * load : 0])),
  }
}

/** V AC at the plug of the lamp with nothing on it. */
export function plainAcVolts(now: Now, rpm: number): number {
  const { circuit, machine } = now.site.world
  const plugged = partsIn(machine, 'lamp').find(({ id }) => circuit.ends[id] !== undefined)!
  const [plug, hot] = circuit.ends[plugged.id]!
  return Number.isFinite(ohmsTo(now, [plug, hot])) ? openVolts(now, rpm) : 0
}

function openVolts(now: Now, rpm: number): number {
  const { machine } = now.site.world
  const winding = partsIn(machine, 'lighting')[0]!.id
  const wires = partsIn(machine, 'lighting-wires')[0]!.id
  const peak = emf(now, winding, rpm)
  const { ohms } = now.good(winding)
  const kept =
    keptAtWork(now.effect(winding), ohms, peak) *
    keptAtWork({ ...now.effect(wires), at: 0 }, ohms, peak)
  return (peak * kept) / Math.SQRT2
}

/** Ω in the way from the core to the lamp, beyond a good winding. */
function ohmsTo(now: Now, lamp: readonly [string, number]): number {
  const { circuit, machine } = now.site.world
  const winding = partsIn(machine, 'lighting')[0]!.id
  const net = harness(now).filter(([a, b]) => a !== ground && b !== ground)
  const wires = ohmsBetween(net, node(circuit.grounded![winding]!, 'own'), node(lamp, 'harness'))
  return wires + (now.effect(winding).series ?? 0)
}

/** It grows with speed as the EMF does, so that the current limits itself. */
function reactance(now: Now, rpm: number): number {
  const { peak, rpm: at } = now.good(partsIn(now.site.world.machine, 'lighting')[0]!.id)
  const open = (peak * 3000) / at / Math.SQRT2
  return allLamps * Math.max(0.2, open / lit - 1) * (rpm / 3000)
}
