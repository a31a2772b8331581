import type { Machine } from '../../../../server/knowledge/schema/machine.ts'
import { limitsOn, partNamed, partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Now } from '../now.ts'
import { has, seated } from '../site.ts'
import { groundOhms, loopOhms } from './paths.ts'
import { emf, keptAtWork } from './volts.ts'

/** What follows of pump and injection from the machine as it stands, at one speed. */
export interface Fuel {
  /** V peak at the pump plug, nothing drawing from it. */
  readonly feed: number
  readonly pump: 'hums' | 'strains' | 'silent'
  /** By output: V at the injector plug, as a share of what a good machine brings there. */
  readonly pulse: ReadonlyMap<string, number>
  /** By output: whether the injector opens. */
  readonly opens: ReadonlyMap<string, boolean>
}

/** The unit wakes at this share of what the sheet asks of its winding, and needs so much more to inject. From memory. */
const wakes = 0.45
const injects = 0.7
/** Ω in its ground that a pump still runs with, and an injector. From memory. */
const pumpGround = 6
const injectorGround = 1
/** The unit asks this much of its pickup. From memory. */
const triggers = 0.22

export function fuel(now: Now, rpm: number): Fuel {
  const { site } = now
  const { machine } = site.world
  const outputs = machine.outputs.map(({ id }) => id)
  if (!has(site, 'pump-driver')) {
    return {
      feed: 0,
      pump: 'silent',
      pulse: new Map(),
      opens: new Map(outputs.map((o) => [o, true])),
    }
  }
  const unit = partsIn(machine, 'pump-driver')[0]!.id
  const ill = (...modes: string[]) => now.has(unit, ...modes)
  const ground = groundOhms(now, unit)
  const awake = share(now, 'injection', rpm)
  const feed =
    awake < wakes || ground > pumpGround || ill('no-drive', 'fails-hot')
      ? 0
      : pumpVolts(now, rpm) * Math.min(1.1, share(now, 'pump-winding', rpm))
  const injecting =
    awake >= injects &&
    ground <= injectorGround &&
    !ill('no-pulse', 'fails-hot') &&
    isTimed(now, rpm)
  const pulse = new Map(outputs.map((output) => [output, injecting ? pulseAt(now, output) : 0]))
  return {
    feed: wiresReach(now) ? feed : 0,
    pump: pumpDoes(now, feed),
    pulse,
    opens: new Map(outputs.map((output) => [output, opens(now, output, pulse.get(output)!)])),
  }
}

/** What arrives from a winding, loaded, as a share of the least that its sheet asks for at a modest pull. */
function share(now: Now, role: string, rpm: number): number {
  const { machine } = now.site.world
  const winding = partsIn(machine, role)[0]!.id
  const wires = partsIn(machine, `${role}-wires`)[0]!.id
  const { ohms } = now.good(winding)
  const volts = emf(now, winding, rpm)
  const loop = loopOhms(now, winding)
  if (!Number.isFinite(loop)) return 0
  const kept =
    keptAtWork(now.effect(winding), ohms, volts) *
    keptAtWork({ ...now.effect(wires), at: 0 }, ohms, volts)
  // The unit draws about what matches the winding: extra ohms take their share. From memory.
  const load = 2 * ohms
  const asked = leastPeak(machine, winding) * (load / (load + ohms))
  return (volts * kept * (load / (load + loop))) / asked
}

function pumpVolts(now: Now, rpm: number): number {
  const { peak, rpm: at } = now.good(pumpOf(now))
  return (peak * Math.min(rpm, 1200)) / at
}

const leastPeak = (machine: Machine, part: string) =>
  limitsOn(partNamed(machine, part), 'peak-voltage')!.low!

const pumpOf = (now: Now) => partsIn(now.site.world.machine, 'pump')[0]!.id

/** Whether the wires from the unit reach the pump plug, be it joined or not. */
function wiresReach(now: Now): boolean {
  const { series = 0 } = now.effect(partsIn(now.site.world.machine, 'pump-wires')[0]!.id)
  return !now.site.standing.apart.has('injection-plug') && Number.isFinite(series)
}

function pumpDoes(now: Now, feed: number): Fuel['pump'] {
  const pump = pumpOf(now)
  const loop = loopOhms(now, pump)
  const { ohms } = now.good(pump)
  const { leak = Infinity } = now.effect(partsIn(now.site.world.machine, 'pump-wires')[0]!.id)
  const volts = Number.isFinite(loop) ? feed * (ohms / loop) * (leak / (leak + 0.5) || 1) : 0
  if (volts < 2) return 'silent'
  if (now.has(pump, 'seized')) return 'strains'
  return now.has(pump, 'fails-hot') || volts < 3 ? 'silent' : 'hums'
}

function isTimed(now: Now, rpm: number): boolean {
  const pickup = partsIn(now.site.world.machine, 'unit-pickup')[0]!.id
  const wires = partsIn(now.site.world.machine, 'unit-pickup-wires')[0]!.id
  const { ohms } = now.good(pickup)
  const volts = emf(now, pickup, rpm)
  const loop = loopOhms(now, pickup)
  if (!Number.isFinite(loop)) return false
  const kept =
    keptAtWork(now.effect(pickup), ohms, volts) *
    keptAtWork({ ...now.effect(wires), at: 0 }, ohms, volts)
  return (
    (volts * kept * 2000) / (2000 + loop) >= triggers * leastPeak(now.site.world.machine, pickup)
  )
}

/** At the plug of one injector, light load: only what is broken, grounded or apart stops a test lamp. */
function pulseAt(now: Now, output: string): number {
  if (has(now.site, 'unit-output') && now.has(seated(now.site, 'unit-output', output), 'dead'))
    return 0
  const { series = 0, leak = Infinity } = now.effect(seated(now.site, 'injector-wires', output))
  if (now.site.standing.apart.has('signal-plug') || series > 300) return 0
  return leak / (leak + 2) || 1
}

function opens(now: Now, output: string, pulse: number): boolean {
  const injector = seated(now.site, 'injector', output)
  const glued = partsIn(now.site.world.machine, 'old-fuel').some(({ id }) => now.has(id, 'glued'))
  const loop = loopOhms(now, injector)
  if (glued || (now.effect(injector).gives ?? 1) === 0 || !Number.isFinite(loop)) return false
  // An injector pulls in at a little under half of its current. From memory.
  return (pulse * now.good(injector).ohms) / loop > 0.45
}
