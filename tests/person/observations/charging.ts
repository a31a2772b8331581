import type { CheckHere, Observation } from '../check.ts'
import { answer, barred } from '../seen.ts'
import { spread } from '../world/chance.ts'
import { type Now, nowAt } from '../world/now.ts'
import { partNamed } from '../world/sheet.ts'
import { charging } from '../world/systems/charging.ts'
import { running } from './pulling.ts'

const near = (check: CheckHere, value: number) => value * spread(check.site.random, 1, 0.06)

const rises = (high: string, low: string, volts: (now: Now) => number): Observation => {
  return (check) => running(check, (now) => answer(near(check, volts(now)) >= 0.5 ? high : low))
}

/** The starter needs its battery, and its ground lead. */
function cranked(check: CheckHere, seeing: (now: Now) => string) {
  const now = nowAt(check.site)
  const { batteryGroundOff, batteryOut, standIns } = check.site.standing
  if (batteryGroundOff) return barred('the ground lead is off the battery')
  if (batteryOut && standIns.size === 0) return barred('the battery is out')
  return answer(seeing(now))
}

const drop =
  (volts: (now: Now) => number): Observation =>
  (check) =>
    cranked(check, (now) => (near(check, volts(now)) >= 0.2 ? 'large' : 'small'))

const cranking: Observation = (check) =>
  cranked(check, (now) => (charging(now).cranking > 330 ? 'brisk' : 'slow'))

const wireDrop: Observation = (check) =>
  running(check, (now) => {
    const { role } = partNamed(check.site.world.machine, check.part)
    const { wireDrop: along, fuseDrop } = charging(now)
    return answer(near(check, role === 'fuse' ? fuseDrop : along) >= 0.2 ? 'large' : 'small')
  })

export const chargingChecks: Readonly<Record<string, Observation>> = {
  'charge-volts': rises('rises', 'stays', (now) => charging(now).arrives),
  'known-good-rectifier': rises('rises', 'stays', (now) => charging(now).arrives),
  'rectifier-out-volts': rises('charges', 'nothing', (now) => charging(now).leaves),
  'charge-wire-drop': wireDrop,
  'battery-load': (check) =>
    answer(near(check, charging(nowAt(check.site)).battery) > 0.7 ? 'holds' : 'sags'),
  'battery-terminal-drop': drop((now) => charging(now).leadDrop),
  'battery-ground-drop': drop((now) => charging(now).groundDrop),
  'cranking-speed': cranking,
  'jump-start': cranking,
  'standing-drain': ({ site, part }) =>
    answer(nowAt(site).has(part, 'shorted') ? 'drains' : 'none'),
}
