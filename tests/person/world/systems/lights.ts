import { node } from '../../../../server/practice/world/node.ts'
import { partsIn } from '../../../../server/practice/world/sheet.ts'
import { ohmsBetween } from '../../../../server/practice/world/solve.ts'
import { harness } from '../network.ts'
import type { Now } from '../now.ts'
import { has } from '../site.ts'
import { loopOhms } from './paths.ts'
import { plainAcVolts, plainLights } from './plain-lights.ts'
import { emf, keptAtWork } from './volts.ts'

/** What follows of the lights from the machine as it stands, at one speed, lamps on or off. */
export interface Lights {
  /** V AC at the output of the regulator, to its own ground pin and to the metal of the engine. */
  readonly atRegulator: number
  readonly atRegulatorToMetal: number
  /** V AC lost in the ground of the regulator. */
  readonly regulatorDrop: number
  /** V AC at the plug of the lamp: to its own ground and to the metal of the engine. */
  readonly atLamp: number
  readonly atLampToMetal: number
  /** By lamp: V AC across its filament; 0 where it is dark. */
  readonly lamps: ReadonlyMap<string, number>
}

/** All lamps together, hot, Ω: 60 W at 12 V. Common practice. */
const allLamps = 2.4
/** A that the shunt throws away at speed, with the lamps on and off. From memory. */
const surplus = { on: 3, off: 7 }

export function lights(now: Now, rpm: number, on: boolean): Lights {
  if (!has(now.site, 'regulator')) return plainLights(now, rpm)
  const { machine } = now.site.world
  const regulator = partsIn(machine, 'regulator')[0]!.id
  const drawing = on && pathOpen(now) ? lampsThatDraw(now) : 0
  const source = sourceVolts(now, rpm, drawing)
  const holds = now.good(regulator).atSpeed
  const { across = Infinity } = now.effect(regulator)
  const open = now.has(regulator, 'open', 'open-burns-lamps')
  const ground = regulatorGround(now)
  const throwsAway = on ? surplus.on : surplus.off
  // The shunt dumps the surplus through its ground wire: ohms there lift what it holds.
  const held = open ? source : Math.min(source, holds + throwsAway * ground)
  const shunted = Number.isFinite(across)
    ? Math.min(held, (source * across) / (across + sourceOhms(now, rpm)))
    : held
  const joined = !now.site.standing.apart.has('regulator-plug')
  const toMetal = joined ? shunted : 0
  const clamps = toMetal >= holds - 0.01 && !open
  const drop = clamps ? Math.min(toMetal, throwsAway * Math.min(ground, 1e6)) : 0
  return {
    atRegulator: ground > 1e3 ? toMetal * 0.1 : toMetal - drop,
    atRegulatorToMetal: toMetal,
    regulatorDrop: ground > 1e3 ? toMetal * 0.9 : drop,
    ...atTheLamps(now, toMetal, on),
  }
}

/** V AC without load, then behind the reactance of a winding that the lamps load. */
function sourceVolts(now: Now, rpm: number, drawing: number): number {
  const open = acVolts(now, rpm)
  if (drawing === 0) return open
  const load = allLamps / drawing
  return (open * load) / (load + sourceOhms(now, rpm) + extraOhms(now))
}

/** V AC that the lighting winding gives with nothing on it. */
export function acVolts(now: Now, rpm: number): number {
  if (!has(now.site, 'regulator')) return plainAcVolts(now, rpm)
  const { machine } = now.site.world
  const winding = partsIn(machine, 'lighting')[0]!.id
  const wires = partsIn(machine, 'lighting-wires')[0]!.id
  const peak = emf(now, winding, rpm)
  const { ohms } = now.good(winding)
  // With the regulator plugged in its one end is at metal: a path to metal shorts the winding.
  const grounded = !now.site.standing.apart.has('regulator-plug')
  const kept = grounded
    ? keptAtWork(now.effect(winding), ohms, peak) *
      keptAtWork({ ...now.effect(wires), at: 0 }, ohms, peak)
    : 1
  return Number.isFinite(lightingLoop(now)) ? (peak * kept) / Math.SQRT2 : 0
}

/** At 3000 rpm a good winding brings all lamps so far above what the regulator holds. From memory. */
const spare = 1.35

/** Reactance grows with speed as the EMF does, so that the current limits itself. */
function sourceOhms(now: Now, rpm: number): number {
  const { machine } = now.site.world
  const { peak, rpm: at } = now.good(partsIn(machine, 'lighting')[0]!.id)
  const holds = now.good(partsIn(machine, 'regulator')[0]!.id).atSpeed
  const open = (peak * 3000) / at / Math.SQRT2
  return allLamps * Math.max(0.2, open / (holds * spare) - 1) * (rpm / 3000)
}

function lightingLoop(now: Now): number {
  const winding = partsIn(now.site.world.machine, 'lighting')[0]!.id
  const loop = loopOhms(now, winding)
  // With the regulator apart the loop ends at its harness half.
  if (Number.isFinite(loop)) return loop
  const [a, b] = [node(['regulator-plug', 1], 'harness'), node(['regulator-plug', 2], 'harness')]
  return ohmsBetween(harness(now), a, b)
}

const extraOhms = (now: Now) => {
  const winding = partsIn(now.site.world.machine, 'lighting')[0]!.id
  return Math.max(0, lightingLoop(now) - now.good(winding).ohms)
}

/** Ω from the regulator's own ground pin to metal, a second ground included. */
export function regulatorGround(now: Now): number {
  const ohms = ohmsBetween(harness(now), node(['regulator-plug', 4], 'own'), 'ground')
  const { jumper, standIns } = now.site.standing
  const helped = jumper === 'regulator' || standIns.size > 0
  return helped ? Math.min(ohms, 0.1) : ohms
}

/** Ω from the regulator to the lamps: plugs, wires, switch, or the jumper in its place. */
function feedOhms(now: Now): number {
  const { circuit } = now.site.world
  const plug = lampPlug(now)
  const from = node(['regulator-plug', 3], 'own')
  const bridged = now.site.standing.jumper === 'lamp-switch'
  const net = bridged
    ? [
        ...harness(now),
        [
          node(['lamp-switch-plug', 1], 'harness'),
          node(['lamp-switch-plug', 2], 'harness'),
          0.1,
        ] as const,
      ]
    : harness(now)
  const to = node([plug, circuit.ends[lampOnPlug(now)]![1]], 'harness')
  return ohmsBetween(
    net.filter(([a, b]) => a !== 'ground' && b !== 'ground'),
    from,
    to,
  )
}

const lampOnPlug = (now: Now) =>
  partsIn(now.site.world.machine, 'lamp').find(({ id }) => now.site.world.circuit.ends[id])!.id

const lampPlug = (now: Now) => now.site.world.circuit.ends[lampOnPlug(now)]![0]

function lampGroundOhms(now: Now): number {
  const ground = partsIn(now.site.world.machine, 'lamp-ground')[0]!.id
  return now.good(ground).ohms + (now.effect(ground).series ?? 0)
}

const pathOpen = (now: Now) =>
  Number.isFinite(feedOhms(now)) && Number.isFinite(lampGroundOhms(now))

/** Share of the lamps that draw current. */
function lampsThatDraw(now: Now): number {
  const all = partsIn(now.site.world.machine, 'lamp')
  if (now.site.standing.lampsOut) return now.site.standing.goodLamp ? 0.5 : 0
  const burning = all.filter(({ id }) => lampOhms(now, id) < 20).length
  return Math.min(1, (burning + (now.site.standing.goodLamp ? 1 : 0)) / all.length)
}

/** A regulator that has let the voltage rise has burnt them all. */
function lampOhms(now: Now, lamp: string): number {
  return allBurnt(now) ? Infinity : (now.effect(lamp).series ?? 0)
}

export const allBurnt = (now: Now): boolean =>
  partsIn(now.site.world.machine, 'regulator').some(({ id }) => now.has(id, 'open-burns-lamps'))

function atTheLamps(now: Now, volts: number, on: boolean) {
  const { standing, world } = now.site
  const all = partsIn(world.machine, 'lamp').map(({ id }) => id)
  const dark = new Map(all.map((id) => [id, 0]))
  const feed = on ? feedOhms(now) : Infinity
  if (!Number.isFinite(feed)) return { atLamp: 0, atLampToMetal: 0, lamps: dark }
  const { leak = Infinity } = now.effect(partsIn(world.machine, 'lamp-wires')[0]!.id)
  const supplied = Number.isFinite(leak) ? (volts * leak) / (leak + 2) : volts
  const ground = lampGroundOhms(now)
  if (!Number.isFinite(ground)) return { atLamp: 0, atLampToMetal: supplied, lamps: dark }
  // Where nothing draws, the meter's own megohms are the load, and a bad joint loses nothing.
  const drawing = lampsThatDraw(now)
  const load = drawing > 0 ? allLamps / drawing : 1e7
  const amperes = supplied / (feed + ground + load)
  const lit = (id: string) =>
    !standing.lampsOut && lampOhms(now, id) < 20 && !standing.apart.has(lampPlug(now))
  return {
    atLamp: amperes * load,
    atLampToMetal: amperes * (load + ground),
    lamps: new Map(all.map((id) => [id, lit(id) ? amperes * load : 0])),
  }
}
