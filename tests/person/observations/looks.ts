import { happens } from '../../../server/practice/world/chance.ts'
import { partNamed, partsIn } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, cannotTell, type Seen } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { seated, seatOf } from '../world/site.ts'
import { caps, doing, plugs } from '../world/standing.ts'
import { firing, idle, isFlooded } from '../world/systems/engine.ts'
import { fuel } from '../world/systems/fuel.ts'
import { ignition } from '../world/systems/ignition.ts'
import { allBurnt } from '../world/systems/lights.ts'
import { isOnGround } from '../world/systems/starting.ts'
import { outputsOf, type World } from '../world/world.ts'
import { running } from './pulling.ts'
import { lasting } from './spark.ts'

/**
 * What age alone does to good parts, so that it looks wrong and is not: the same at every look. Shares from memory,
 * for machines that are some years old.
 */
type Age = Readonly<Record<string, number>>

/** What eyes and fingers find on one part; else what age has done to it; else that it is good. */
export const look =
  (good: string, age: Age, finds: readonly string[]): Observation =>
  ({ site, part, kind }) => {
    const seen = looksOf(nowAt(site), site, part)
    if (seen !== undefined && finds.includes(seen)) return answer(seen)
    return answer(aged(site.world, part, kind, age) ?? good)
  }

/** What comes and goes leaves its marks even while it is gone. */
export function looksOf(now: Now, site: CheckHere['site'], part: string): string | undefined {
  return (
    now.effect(part).looks ?? site.world.faults.find((fault) => fault.part === part)?.effect.looks
  )
}

function aged({ seed, renewed }: World, part: string, kind: string, age: Age): string | undefined {
  if (renewed.has(part)) return undefined
  let left = lasting(seed, part, kind)()
  for (const [looks, share] of Object.entries(age)) {
    left -= share
    if (left < 0) return looks
  }
  return undefined
}

/** Soot and a wide gap are plain to see; a plug in a flooded engine is wet on top. */
function plugLooks(now: Now, output: string): 'good' | 'bad' {
  const { site } = now
  if (site.standing.newPlug.has(output)) return 'good'
  const plug = seated(site, 'plug', output)
  if (looksOf(now, site, plug) === 'bad') return 'bad'
  return aged(site.world, plug, 'plugs', { bad: 0.06 }) === 'bad' ? 'bad' : 'good'
}

/** Pulled without a spark, a good engine wets its plugs as well, in one of four; of several often one alone. From memory. */
function wetByPulling({ seed }: World, several: boolean): 'all-wet' | 'one-wet' | undefined {
  const left = lasting(seed, 'plugs', 'wet')()
  if (left >= 0.25) return undefined
  return several && left > 0.2 ? 'one-wet' : 'all-wet'
}

const plugsLook: Observation = ({ site }) => {
  const now = nowAt(site)
  const outputs = outputsOf(site.world)
  const isWorn = (output: string) => {
    const plug = seated(site, 'plug', output)
    return site.world.faults.some(({ part, mode }) => part === plug && mode === 'worn')
  }
  const amiss = outputs.filter((output) => plugLooks(now, output) === 'bad')
  const bad = amiss.filter((output) => !isWorn(output)).length
  if (isFlooded(now)) return answer('all-wet')
  if (bad === outputs.length) return answer('all-bad')
  if (bad > 0) return answer('one-bad')
  if (amiss.length > 0) return answer('worn')
  return answer(wetByPulling(site.world, outputs.length > 1) ?? 'good')
}

/** It runs first, and is unscrewed then. */
function beforeItWasOut(check: CheckHere): CheckHere {
  const outputs = outputsOf(check.site.world)
  const standing = doing([plugs('in', ...outputs), caps('on its plug', ...outputs)])(
    check.site.standing,
  )
  return { ...check, site: { ...check.site, standing } }
}

/** Wet: it got fuel and no spark. Dry: it got no fuel. */
const deadPlug: Observation = (check) =>
  running(beforeItWasOut(check), (now): Seen => {
    const { site } = check
    const dead = outputsOf(site.world).find((output) => !firing(now, idle).includes(output))
    if (dead === undefined) return cannotTell('all of them fire')
    if (plugLooks(now, dead) === 'bad') return answer('bad')
    const fed = fuel(now, idle).opens.get(dead)!
    if (!fed) return answer('dry')
    const sparks = ignition(now, idle).outputs.get(dead)!.spark > 0.5
    // Fuel that is lit at times dries the plug in part.
    return answer(sparks && happens(site.random, 0.4) ? 'dry' : 'wet')
  })

const filaments: Observation = ({ site }) => {
  const now = nowAt(site)
  const all = partsIn(site.world.machine, 'lamp').map(({ id }) => id)
  if (allBurnt(now)) return answer('all-burnt')
  const burnt = all.filter((id) => now.effect(id).looks !== undefined).length
  if (burnt === all.length && all.every((id) => now.has(id, 'burnt', 'burnt-in-turn')))
    return answer('all-burnt')
  const aging = aged(site.world, 'lamps', 'filaments', { 'some-burnt': 0.05 })
  return answer(burnt > 0 ? 'some-burnt' : (aging ?? 'all-whole'))
}

const keyLook: Observation = ({ site, part }) =>
  answer(nowAt(site).has(part, 'sheared') ? 'sheared' : 'whole')

/** A key that is cut a little moves the mark by less than the eye is sure of. */
const staticTiming: Observation = ({ site, part }) =>
  answer(
    nowAt(site).has(part, 'sheared') && lasting(site.world.seed, part, 'mark')() < 0.85
      ? 'off'
      : 'right',
  )

/** Each magnet snatches at a screwdriver; how strongly is a matter of feel. */
const magnets: Observation = look('strong', { weak: 0.03 }, ['weak', 'loose'])

/** It stands at a bench or a trail and moves all the same: nothing has to shake it loose first. */
const pickupPush: Observation = ({ site, part }) =>
  answer(
    site.world.faults.some((fault) => fault.part === part && fault.mode === 'loose')
      ? 'moves'
      : 'firm',
  )

/** A look at a part that was exchanged with its twin finds the twin. */
const atItsPlace =
  (observe: Observation): Observation =>
  (check) =>
    observe({ ...check, part: seatOf(check.site, check.part) })

/** A wire that touches metal has blown the fuse that guards it. */
const fuseLook: Observation = (check) => {
  const { site, part } = check
  const behind = {
    'ignition-fuse': ['supply-wires'],
    fuse: ['key-wires', 'start-wires'],
    'dash-fuse': [],
  }[partNamed(site.world.machine, part).role as 'fuse' | 'ignition-fuse' | 'dash-fuse']
  const now = nowAt(site)
  if (behind.some((role) => isOnGround(now, role))) return answer('blown')
  return look('good', { 'burnt-holder': 0.04 }, ['blown', 'burnt-holder'])(check)
}

export const looksChecks: Readonly<Record<string, Observation>> = {
  'battery-case-look': look('good', { 'swollen-or-dry': 0.04 }, ['swollen-or-dry']),
  'battery-terminals-look': look('good', { corroded: 0.06 }, ['loose', 'corroded']),
  'cap-look': atItsPlace(
    look('good', { 'burnt-or-cracked': 0.03, loose: 0.03 }, ['loose', 'burnt-or-cracked']),
  ),
  'fuse-look': fuseLook,
  'interlock-look': look('good', { 'stiff-or-wet': 0.07, 'out-of-place': 0.02 }, [
    'stiff-or-wet',
    'out-of-place',
  ]),
  'interlock-let-go': look('good', { 'stiff-or-wet': 0.07, 'out-of-place': 0.02 }, [
    'stiff-or-wet',
    'out-of-place',
  ]),
  'ground-look': look('good', { corroded: 0.1, loose: 0.02 }, ['loose', 'corroded']),
  'key-look': keyLook,
  'inlet-look': look('sound', { faulty: 0.02 }, ['faulty']),
  'module-gap': look('right', { wide: 0.03, touching: 0.01 }, ['wide']),
  'module-legs': look('clean', { rusty: 0.08 }, ['rusty']),
  'static-timing': staticTiming,
  'magnets-pull': magnets,
  'rim-magnet': magnets,
  'pickup-lug': look('clean', { dirty: 0.06 }, ['dirty']),
  'pickup-gap': look('right', { dirty: 0.06, wrong: 0.02 }, ['wrong', 'dirty']),
  'pickup-push': pickupPush,
  'pickup-polarity': look('as-sheet', { crossed: 0.02 }, ['crossed']),
  'plate-marks': look('stands', { moved: 0.04 }, ['moved']),
  'pins-look': look('clean', { corroded: 0.08, chafed: 0.03 }, [
    'corroded',
    'pushed-back',
    'chafed',
  ]),
  'regulator-pin-look': look('good', { corroded: 0.06 }, ['corroded', 'pushed-back']),
  'shared-plug-look': look('clean', { 'wet-or-green': 0.06 }, ['wet-or-green']),
  'stop-wire-look': look('whole', { bare: 0.02 }, ['bare']),
  'stop-switch-look': look('good', { 'stiff-or-wet': 0.06, 'out-of-place': 0.02 }, [
    'stiff-or-wet',
    'out-of-place',
  ]),
  'stop-switch-to-off': look('good', { 'stiff-or-wet': 0.06, 'out-of-place': 0.02 }, [
    'stiff-or-wet',
    'out-of-place',
  ]),
  'plug-look-one': ({ site, output }) => answer(plugLooks(nowAt(site), output)),
  'plugs-look': plugsLook,
  'dead-plug-look': deadPlug,
  'filaments-look': filaments,
}
