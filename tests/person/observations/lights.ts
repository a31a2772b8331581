import type { CheckHere, Observation } from '../check.ts'
import { answer } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { doing } from '../world/site.ts'
import { cruise, idle } from '../world/systems/engine.ts'
import { lights } from '../world/systems/lights.ts'
import { running } from './pulling.ts'

/** V at which a lamp is seen to burn, and above which it glares. Common practice. */
const burns = 4
const glares = 15.2
const bright = 9.5

const lampVolts = (now: Now, rpm: number) => Math.max(...lights(now, rpm, true).lamps.values())

/** A lamp that is known to burn needs nothing but volts and a ground at its holder. */
const goodLamp: Observation = (check) =>
  running(check, (now) => answer(lights(now, idle, true).atLamp > burns ? 'lights' : 'dark'))

const anyLight: Observation = (check) =>
  running(check, (now) => answer(lampVolts(now, idle) > burns ? 'light' : 'dark'))

const heldDown: Observation = (check) =>
  running(check, (now) =>
    answer(lights(now, cruise, true).atLampToMetal > glares ? 'too-high' : 'right'),
  )

const brightness: Observation = (check) =>
  running(check, (now) => answer(lampVolts(now, cruise) >= bright ? 'bright' : 'dim'))

const shakenLit: Observation = (check) =>
  running(check, (now) => answer(flickers(check, now) ? 'flicker' : 'steady'))

function flickers(check: CheckHere, before: Now): boolean {
  const still = [...lights(before, idle, true).lamps.values()]
  return [1, 2, 3].some(() => {
    const now = nowAt(doing(check.site, { shaken: check.part }))
    const shaken = [...lights(now, idle, true).lamps.values()]
    return shaken.some((volts, i) => Math.abs(volts - still[i]!) > 1)
  })
}

export const lightsChecks: Readonly<Record<string, Observation>> = {
  'known-good-lamp': goodLamp,
  'known-good-regulator': goodLamp,
  'known-good-regulator-bright': heldDown,
  'regulator-ground-jumper': heldDown,
  'known-good-regulator-dim': brightness,
  'lamp-switch-jumper': anyLight,
  'lit-shake': shakenLit,
}
