import { happens } from '../../../server/practice/world/chance.ts'
import { partsIn } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred } from '../seen.ts'
import { complains } from '../world/complaints.ts'
import { nowAt } from '../world/now.ts'
import { seated, doing as whileDoing } from '../world/site.ts'
import { caps, doing, plugs } from '../world/standing.ts'
import { fuelCause, isFlooded, ropeIsOff } from '../world/systems/engine.ts'
import { fuel } from '../world/systems/fuel.ts'
import { outputsOf } from '../world/world.ts'
import { dried } from './engine.ts'
import { isSeen, running, threePulls } from './pulling.ts'
import { lasting } from './spark.ts'

const pumpSounds: Observation = (check) => {
  const heard = threePulls(check, (now, rpm) => fuel(now, rpm).pump)
  if (isSeen(heard)) return heard
  if (heard.includes('hums')) return answer('hums')
  return answer(heard.includes('strains') ? 'strains' : 'silent')
}

/** Gum and grit of a carburettor that is blocked, and what is wrong with the fuel itself. */
const bowlDrain: Observation = ({ site, part, kind }) => {
  const now = nowAt(site)
  const ofFuel = partsIn(site.world.machine, 'fuel').some(({ id }) => now.effect(id).looks)
  const old = lasting(site.world.seed, part, kind)() < 0.06
  return answer(now.effect(part).looks === 'dirty' || ofFuel || old ? 'dirty' : 'clean')
}

/** What is blocked in the passages behind them is not seen. */
const jetsLook: Observation = ({ site, part, kind }) => {
  const isBlocked = site.world.faults.some(
    (fault) => fault.part === part && fault.mode === 'blocked',
  )
  const chance = isBlocked ? 0.85 : 0.04
  return answer(lasting(site.world.seed, part, kind)() < chance ? 'blocked' : 'clear')
}

/** Only whether it hums. */
const pumpHums: Observation = (check) => {
  const heard = threePulls(check, (now, rpm) => fuel(now, rpm).pump)
  return isSeen(heard) ? heard : answer(heard.includes('hums') ? 'hums' : 'silent')
}

/** Twelve volts of a battery: a seized one strains or draws in silence. */
const pumpOnBattery: Observation = ({ site, part }) => {
  const now = nowAt(site)
  if (!Number.isFinite(now.effect(part).series ?? 0)) return answer('silent')
  return answer(now.has(part, 'seized') ? 'strains' : 'hums')
}

function lampAt(check: CheckHere, outputs: readonly string[]) {
  const seen = threePulls(check, (now, rpm) =>
    Math.max(...outputs.map((output) => fuel(now, rpm).pulse.get(output)!)),
  )
  if (isSeen(seen)) return seen
  return answer(seen.every((pulse) => pulse > 0.5) ? 'flashes' : 'dark')
}

const injectorTicks: Observation = (check) => {
  const heard = threePulls(check, (now, rpm) => fuel(now, rpm).opens.get(check.output)!)
  return isSeen(heard) ? heard : answer(heard.every(Boolean) ? 'ticks' : 'silent')
}

const injectorClicks: Observation = (check) => {
  const now = nowAt(check.site)
  const injector = seated(check.site, 'injector', check.output)
  const { gives = 1, series = 0 } = now.effect(injector)
  const glued = partsIn(check.site.world.machine, 'old-fuel').some(({ id }) => now.has(id, 'glued'))
  return answer(gives > 0 && Number.isFinite(series) && !glued ? 'clicks' : 'silent')
}

const anyPlug: Observation = (check) => lampAt(check, outputsOf(check.site.world))

/** Soaked where it is flooded, dry where nothing arrives. In the cold fuel smells of little, and damp is called dry. */
const plugAfterPulls: Observation = (check) => {
  const { site } = check
  const now = nowAt(site)
  if (ropeIsOff(now)) return barred('the rope starter is off')
  if (isFlooded(now)) return answer(happens(site.random, 0.88) ? 'soaked' : 'damp')
  const cause = fuelCause(now)
  const glued = partsIn(site.world.machine, 'old-fuel').some(({ id }) => now.has(id, 'glued'))
  if (glued || (cause !== undefined && cause !== 'fuel'))
    return answer(happens(site.random, 0.82) ? 'dry' : 'damp')
  const chance = lasting(site.world.seed, 'plugs', 'after pulls')()
  return answer(chance < 0.72 ? 'damp' : chance < 0.86 ? 'soaked' : 'dry')
}

/** Plugs in, caps on. */
const together = ({ world, standing }: CheckHere['site']) => {
  const outputs = outputsOf(world)
  return doing([plugs('in', ...outputs), caps('on its plug', ...outputs)])(standing)
}

/** It fires on what it is given, where spark, timing and compression do. */
const drops: Observation = (asItStands) => {
  if (ropeIsOff(nowAt(asItStands.site))) return barred('the rope starter is off')
  const check = dried(asItStands, 0.4)
  const { world } = check.site
  // It is pulled with the plugs in again.
  const site = { ...check.site, standing: together(check.site) }
  const roles = ['fuel', 'fuel-feed', 'carburettor', 'old-fuel']
  const ofFuel = roles.flatMap((role) => partsIn(world.machine, role)).map(({ id }) => id)
  const faults = world.faults.filter(({ part }) => !ofFuel.includes(part))
  const isIll = complains({ ...site, world: { ...world, faults, elsewhere: false } })
  const leaks = world.elsewhere && lasting(world.seed, 'engine', 'drops')() < 0.75
  return answer(isIll || leaks || happens(site.random, 0.1) ? 'nothing' : 'coughs')
}

/** What choke or throttle does for an engine that dies: chance that it runs on, by what is wrong. From memory. */
const helped =
  (chances: Readonly<Record<string, number>>, good: number): Observation =>
  (check) =>
    running(check, () => {
      const { seed, faults } = check.site.world
      const chance = faults.map(({ mode }) => chances[mode]).find((each) => each !== undefined)
      return answer(lasting(seed, 'engine', check.kind)() < (chance ?? good) ? 'runs-on' : 'dies')
    })

/** By ear, as the engine dies: a pump that is no longer fed goes first. */
const pumpAsItDies: Observation = (check) =>
  running(check, () => {
    const tries = [1, 2, 3].map(() => fuel(nowAt(doingAll(check)), 1500).pump)
    const isUnfed = tries.some((pump) => pump !== 'hums')
    return answer(isUnfed && happens(check.site.random, 0.92) ? 'falls-silent' : 'hums')
  })

const doingAll = ({ site }: CheckHere) => whileDoing(site, { shaken: 'all', wetted: 'all' })

/** What eyes and nose find at fuel, hose and choke; else that it is good. */
const found =
  (good: string, age: string, share: number): Observation =>
  ({ site, part, kind, card }) => {
    // What comes with heat is seen cold as well.
    const all = site.world.faults.find((fault) => fault.part === part)?.effect.looks
    // What another look would find is no answer to this one.
    const looks = card.answers?.some(({ id }) => id === all) ? all : undefined
    const old = lasting(site.world.seed, part, kind)() < share
    return answer(looks ?? (old ? age : good))
  }

export const fuelChecks: Readonly<Record<string, Observation>> = {
  'plug-after-pulls': plugAfterPulls,
  'drops-of-fuel': drops,
  'bowl-drain': bowlDrain,
  'jets-look': jetsLook,
  'fuel-look': found('fresh', 'old', 0.06),
  'fuel-flow': found('flows', 'trickles', 0.04),
  'choke-look': found('works', 'idle', 0.04),
  'hose-look': found('clear', 'hot-side', 0.08),
  'choke-keeps-it': helped(
    { blocked: 0.75, shut: 0.15, watery: 0.2, 'idle-low': 0.3, 'breathes-badly': 0.6 },
    0.12,
  ),
  'throttle-held': helped({ 'idle-low': 0.95, blocked: 0.25, 'choke-open': 0.35 }, 0.12),
  'idle-turned-up': helped({ 'idle-low': 0.9, blocked: 0.2, 'choke-open': 0.15 }, 0.08),
  'choke-by-hand': helped(
    { 'choke-open': 0.8, 'choke-closed': 0.85, blocked: 0.6, 'idle-low': 0.25 },
    0.1,
  ),
  'pump-as-it-dies': pumpAsItDies,
  'pump-listen': pumpSounds,
  'pump-when-hot': pumpHums,
  'known-good-unit': pumpHums,
  'unit-ground-jumper': pumpHums,
  'pump-on-battery': pumpOnBattery,
  'injector-lamp': (check) => lampAt(check, [check.output]),
  'known-good-unit-pulse': anyPlug,
  'unit-ground-jumper-pulse': anyPlug,
  'injector-tick': injectorTicks,
  'injector-on-battery': injectorClicks,
}
