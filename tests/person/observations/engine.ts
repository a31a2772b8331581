import { happens } from '../../../server/practice/world/chance.ts'
import { partsIn } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred, cannotTell } from '../seen.ts'
import { complains } from '../world/complaints.ts'
import { type Now, nowAt } from '../world/now.ts'
import { type Doing, doing, seated } from '../world/site.ts'
import { firing, fuelCause, idle, isEarly, ropeIsOff } from '../world/systems/engine.ts'
import { ignition } from '../world/systems/ignition.ts'
import { outputsOf } from '../world/world.ts'
import { notRunning, running } from './pulling.ts'
import { lasting } from './spark.ts'

const firesNow = (check: CheckHere, what: Doing = {}) =>
  firing(nowAt(doing(check.site, what)), idle)

/** It stumbles where a cylinder that fired no longer does. */
function stumbles(check: CheckHere, what: Doing): boolean {
  const before = firesNow(check).length
  return [1, 2, 3].some(() => firesNow(check, what).length < before)
}

const shaken: Observation = (check) =>
  running(check, () => answer(stumbles(check, { shaken: check.part }) ? 'stumbles' : 'runs-on'))

/** Part after part of one region of the machine, by the roles that its step names. */
const inTurn =
  (what: 'shaken' | 'wetted', roles: readonly string[]): Observation =>
  (check) =>
    running(check, () => {
      const { machine } = check.site.world
      const parts = machine.parts.filter(({ role }) => roles.includes(role))
      const any = parts.some(({ id }) => stumbles(check, { [what]: id }))
      return answer(any ? 'stumbles' : 'runs-on')
    })

const switches = ['stop-switch', 'tether', 'throttle-safety', 'run-switch']
const fromMagneto = [
  'points-lead',
  'primary-wires',
  'exciter-wires',
  'pickup-wires',
  'injection-wires',
  'pump-winding-wires',
  'unit-pickup-wires',
]
const fromBoxes = [
  'igniter-ground',
  'coil-ground',
  'unit-ground',
  'coil-wires',
  'injector-wires',
  'pump-wires',
]
const toBoxes = ['supply-wires', 'key-wires', 'ignition-fuse', 'fuse']
const runLine = ['run-wires', 'run-ground']

const exhaustWarmth: Observation = (check) =>
  running(check, (now) => answer(firing(now, idle).includes(check.output) ? 'hot' : 'cold'))

const swapPlugs: Observation = (check) =>
  running(check, (now) => answer(firing(now, idle).includes(check.output) ? 'fires' : 'dead'))

const everything: Doing = { shaken: 'all', wetted: 'all' }

const flash: Observation = (check) =>
  running(check, () => {
    const before = firesNow(check).length
    for (let tries = 0; tries < 4; tries += 1) {
      const now = nowAt(doing(check.site, everything))
      if (firing(now, idle).length >= before) continue
      const { pulse } = ignition(now, idle).outputs.get(check.output)!
      return answer(pulse < 20 ? 'flash-stops' : 'flash-goes-on')
    }
    return cannotTell('it does not cut out while it is watched')
  })

/** A trial of the complaint itself, with something new in place. */
const tried =
  (gone: string, still: string): Observation =>
  (check) => {
    if (ropeIsOff(nowAt(check.site))) return barred('the rope starter is off')
    const isThere = complains(check.site)
    return isThere && leftApart(check) ? notRunning(check) : answer(isThere ? still : gone)
  }

/** Whether it would be there for what stands apart alone. */
function leftApart({ site }: CheckHere): boolean {
  return complains({ ...site, world: { ...site.world, faults: [], elsewhere: false } })
}

/** Watched to its end: spark faults come as it shakes, all others leave the flashes. */
const flashAsItDies: Observation = (check) =>
  running(check, () => {
    const now = nowAt(doing(check.site, everything))
    if (fuelCause(now) !== undefined || check.site.world.elsewhere) return answer('flash-goes-on')
    for (let tries = 0; tries < 4; tries += 1) {
      const dying = nowAt(doing(check.site, everything))
      const isDead = !firing(dying, idle).includes(check.output)
      if (!isDead) continue
      const { pulse } = ignition(dying, idle).outputs.get(check.output)!
      return answer(pulse < 20 ? 'flash-stops' : 'flash-goes-on')
    }
    return cannotTell('it runs on while it is watched')
  })

const hotRun: Observation = (check) =>
  running(check, () => {
    const hot = { ...check.site, standing: { ...check.site.standing, hotAt: check.site.clock } }
    const fails =
      check.site.world.elsewhere || firing(nowAt(hot), idle).length < firesNow(check).length
    return answer(fails ? 'fails' : 'runs')
  })

const newPlugRuns: Observation = (check) =>
  running(check, (now) =>
    answer(firing(now, idle).length === outputsOf(check.site.world).length ? 'fires' : 'dead'),
  )

const timingMark: Observation = (check) =>
  running(check, (now) => {
    const { machine } = check.site.world
    if (partsIn(machine, 'flywheel-key').some(({ id }) => now.has(id, 'sheared')))
      return answer('off')
    const loose = partsIn(machine, 'pickup').some(({ id }) => isLoose(now, id))
    return answer(loose && happens(check.site.random, 0.8) ? 'jumps' : 'right')
  })

const isLoose = ({ site }: Now, part: string) =>
  site.world.faults.some((fault) => fault.part === part && fault.mode === 'loose')

/** The mark by the flashes, on three pulls with the plugs out. */
const timingPulled =
  (early: string, right: string): Observation =>
  (check) => {
    const { site, output } = check
    if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
    const pulls = [1, 2, 3].map(() => nowAt(doing(site, everything)))
    const outputs = output === '' ? outputsOf(site.world) : [output]
    return answer(pulls.some((now) => outputs.some((one) => isEarly(now, one))) ? early : right)
  }

/** As it stands without what is wrong with parts of these roles. */
function without({ site, ...check }: CheckHere, ...roles: readonly string[]): CheckHere {
  const { world } = site
  const left = roles.flatMap((role) => partsIn(world.machine, role)).map(({ id }) => id)
  const faults = world.faults.filter(({ part }) => !left.includes(part))
  return { ...check, site: { ...site, world: { ...world, faults } } }
}

/** Its plugs dried and aired, an engine that was flooded starts in this share. From memory. */
export const dried = (check: CheckHere, share: number): CheckHere =>
  lasting(check.site.world.seed, 'engine', 'dried')() < share ? without(check, 'flooding') : check

const newPlugTried: Observation = (check) => tried('well', 'poor')(dried(check, 0.5))

/** Tank, tap and hose are left out: only what lies behind them can still keep it from running. */
const fedFromCan: Observation = (check) => {
  if (ropeIsOff(nowAt(check.site))) return barred('the rope starter is off')
  const { site } = without(dried(check, 0.5), 'fuel', 'fuel-feed')
  return answer(complains(site) ? 'no' : 'starts')
}

/** Within a tenth of the other cylinder, with as many pulls. A gauge scatters by some hundredths. */
const compression: Observation = (check) => {
  const now = nowAt(check.site)
  if (ropeIsOff(now)) return barred('the rope starter is off')
  const { gives = 1 } = now.effect(seated(check.site, 'cylinder', check.output))
  return answer(gives < 0.88 ? 'lower' : 'alike')
}

/** A hump is felt by a hand that has felt others. */
const byRope: Observation = (check) => {
  const now = nowAt(check.site)
  if (ropeIsOff(now)) return barred('the rope starter is off')
  const { world } = check.site
  const isLow = partsIn(world.machine, 'cylinder').some(({ id }) => {
    const { gives = 1 } = now.effect(id)
    return gives < 0.75
  })
  // A leaking valve or seal, a cause that no tree holds, is felt as well in one of three.
  const leaks = world.elsewhere && lasting(world.seed, 'engine', 'leaks')() < 0.3
  return answer(isLow || leaks ? 'easy' : 'firm')
}

export const engineChecks: Readonly<Record<string, Observation>> = {
  'shake-running': shaken,
  'tap-running': shaken,
  'mist-running': (check) =>
    running(check, () => answer(stumbles(check, { wetted: check.part }) ? 'stumbles' : 'runs-on')),
  'shake-controls': inTurn('shaken', [...switches, 'stop-wires', 'key-switch', ...runLine]),
  'shake-magneto': inTurn('shaken', fromMagneto),
  'tap-magneto': inTurn('shaken', ['primary', 'condenser', 'points-lead']),
  'shake-boxes': inTurn('shaken', ['igniter', ...fromBoxes, ...toBoxes]),
  'mist-controls': inTurn('wetted', switches),
  'mist-spark': inTurn('wetted', ['lead', 'cap', 'coil']),
  'mist-looms': inTurn('wetted', [
    'pickup-plug',
    ...fromMagneto,
    ...fromBoxes,
    ...toBoxes,
    ...runLine,
  ]),
  'exhaust-warmth': exhaustWarmth,
  'swap-plugs': swapPlugs,
  'flash-when-it-cuts': flash,
  'flash-as-it-dies': flashAsItDies,
  'new-plug-hot': hotRun,
  'known-good-igniter-hot': hotRun,
  'known-good-igniter-poor': tried('well', 'poor'),
  'new-plug-tried': newPlugTried,
  'unit-second-ground': tried('better', 'same'),
  'new-plug-runs': newPlugRuns,
  'timing-mark': timingMark,
  'timing-pulled': timingPulled('early', 'right'),
  'known-good-igniter-timing': timingPulled('stays', 'moves'),
  'compression-compare': compression,
  'compression-compare-hot': compression,
  'compression-by-rope': byRope,
  'compression-by-rope-hot': byRope,
  'fed-from-a-can': fedFromCan,
}
