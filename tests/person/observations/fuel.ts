import type { CheckHere, Observation } from '../check.ts'
import { answer } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { partsIn } from '../world/sheet.ts'
import { seated } from '../world/site.ts'
import { fuel } from '../world/systems/fuel.ts'
import { outputsOf } from '../world/world.ts'
import { isSeen, threePulls } from './pulling.ts'

const pumpSounds: Observation = (check) => {
  const heard = threePulls(check, (now, rpm) => fuel(now, rpm).pump)
  if (isSeen(heard)) return heard
  if (heard.includes('hums')) return answer('hums')
  return answer(heard.includes('strains') ? 'strains' : 'silent')
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

export const fuelChecks: Readonly<Record<string, Observation>> = {
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
