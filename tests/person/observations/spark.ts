import { between, happens, type Random, seedOf } from '../../../server/practice/world/chance.ts'
import { partNamed, servedBy } from '../../../server/practice/world/sheet.ts'
import { seeded } from '../../bench/random.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred, cannotTell, type Seen } from '../seen.ts'
import { complains } from '../world/complaints.ts'
import { type Now, nowAt } from '../world/now.ts'
import { type Doing, doing, has, seated } from '../world/site.ts'
import { having } from '../world/standing.ts'
import { fuelCause, isWorn, jumps, plugAt, ropeIsOff } from '../world/systems/engine.ts'
import { ignition } from '../world/systems/ignition.ts'
import { outputsOf } from '../world/world.ts'
import { isSeen, pullSpeed, threePulls } from './pulling.ts'

type Gap = { readonly weak: number; readonly blue: number }

/** What three pulls look like: blue on every one, none on any, or something between. */
function asSparks(sparks: readonly number[], { weak, blue }: Gap): Seen {
  if (sparks.every((spark) => spark >= blue)) return answer('spark')
  return answer(sparks.every((spark) => spark < weak) ? 'none' : 'weak')
}

const atCap = (now: Now, output: string, rpm: number) =>
  ignition(now, rpm).outputs.get(output)!.spark

const atPlug = (now: Now, output: string, rpm: number) =>
  atCap(now, output, rpm) * plugAt(now, output).gives

function onTester(check: CheckHere, what: Doing = {}): Seen {
  const sparks = threePulls(check, (now, rpm) => atCap(now, check.output, rpm), what)
  return isSeen(sparks) ? sparks : asSparks(sparks, jumps.tester)
}

/** In whichever cap it sits: with none to choose by, in the first. */
const inOneCap: Observation = (check) =>
  onTester({ ...check, output: outputsOf(check.site.world)[0]! })

function atOnePlug(check: CheckHere): Seen {
  const sparks = threePulls(check, (now, rpm) => atPlug(now, check.output, rpm))
  return isSeen(sparks) ? sparks : asSparks(sparks, jumps.plug)
}

/** Wiped dry: what flooded it no longer counts. */
const atOldPlug: Observation = (check) => {
  const sparks = threePulls(check, (now, rpm) => {
    const { gives = 1 } = now.effect(seated(now.site, 'plug', check.output))
    return atCap(now, check.output, rpm) * gives
  })
  return isSeen(sparks) ? sparks : asSparks(sparks, jumps.plug)
}

const howFar: Observation = (check) => {
  const sparks = threePulls(check, (now, rpm) => atCap(now, check.output, rpm))
  if (isSeen(sparks)) return sparks
  return answer(sparks.every((spark) => spark >= jumps.far) ? 'far-and-blue' : 'short-or-thin')
}

const atOff: Observation = (check) => {
  const { site } = check
  const at = (stopSwitch: 'RUN' | 'OFF'): CheckHere => ({
    ...check,
    site: { ...site, standing: having({ stopSwitch, tether: 'on' })(site.standing) },
  })
  const outputs = outputsOf(site.world)
  const best = (one: CheckHere) =>
    threePulls(one, (now, rpm) => Math.max(...outputs.map((output) => atCap(now, output, rpm))))
  const [atRun, stopped] = [best(at('RUN')), best(at('OFF'))]
  if (isSeen(atRun) || isSeen(stopped)) return isSeen(atRun) ? atRun : (stopped as Seen)
  if (Math.max(...atRun) < jumps.tester.weak) return cannotTell('no spark at RUN either')
  return answer(Math.max(...stopped) >= jumps.tester.weak ? 'spark' : 'none')
}

/** At the cylinder that it is about, or at any. */
const sparksAtAll: Observation = (check) => {
  const outputs = check.output === '' ? outputsOf(check.site.world) : [check.output]
  const sparks = threePulls(check, (now, rpm) =>
    Math.max(...outputs.map((output) => atCap(now, output, rpm))),
  )
  if (isSeen(sparks)) return sparks
  return answer(Math.max(...sparks) >= jumps.tester.weak ? 'spark' : 'none')
}

/** Sparks that go astray are seen and heard in the dark, where there is a pulse at all. */
const leaks =
  (roles: readonly string[]): Observation =>
  (check) => {
    const { site, output, part } = check
    if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
    const wet = nowAt(doing(site, { wetted: 'all' }))
    const parts = part
      ? [part]
      : roles.filter((role) => has(site, role)).map((role) => seated(site, role, output))
    const isFed = ignition(wet, pullSpeed(check)).outputs.get(output)!.pulse > 40
    const seen = parts.some((each) => astray(wet, each))
    return answer(isFed && seen ? 'sparks' : 'nothing')
  }

function astray(now: Now, part: string): boolean {
  if (now.effect(part).holdsOff !== undefined) return happens(now.site.random, 0.93)
  // Mist makes some good old leads glow a little, each time alike. From memory.
  const { seed, renewed } = now.site.world
  return !renewed.has(part) && lasting(seed, part, 'glow')() < 0.02
}

export const lasting = (seed: number, part: string, what: string): Random =>
  seeded(seedOf(seed, part, what))

const warmedSpark: Observation = (check) => {
  const { site, part } = check
  const output = servedBy(partNamed(site.world.machine, part))[0] ?? outputsOf(site.world)[0]!
  const at = (celsius: number) =>
    threePulls(check, (now, rpm) => atCap(now, output, rpm), { tempered: { part, celsius } })
  const cold = at(site.world.weather.parts)
  if (isSeen(cold)) return cold
  if (Math.min(...cold) < jumps.tester.weak) return cannotTell('no spark to begin with')
  const hot = [40, 55, between(site.random, 66, 72)].map(at)
  const sparks = hot.flatMap((each) => (isSeen(each) ? [] : each))
  return answer(Math.min(...sparks) < 0.5 * Math.min(...cold) ? 'lost' : 'stays')
}

const coldSpray: Observation = (check) => {
  const { site, part } = check
  if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
  const ill = (what: Doing) => complainsNow(doing(site, what))
  const { hotAt } = site.standing
  if (site.world.elsewhere && hotAt !== null && site.clock - hotAt < 20) return answer('stays-dead')
  if (!ill({})) return cannotTell('it is not dead hot')
  return answer(ill({ tempered: { part, celsius: 0 } }) ? 'stays-dead' : 'returns')
}

/** Of an engine that stands hot. The complaint itself would run it hot again. */
function complainsNow(site: CheckHere['site']): boolean {
  const now = nowAt(site)
  const rpm = 500
  const outputs = outputsOf(site.world)
  const dead = outputs.some((output) => atPlug(now, output, rpm) < jumps.plug.weak)
  if (dead || fuelCause(now) !== undefined || outputs.some((output) => isWorn(now, output)))
    return true
  return has(site, 'pump') && complains({ ...site, world: asPump(site.world) })
}

const asPump = (world: CheckHere['site']['world']) => ({
  ...world,
  complaint: 'no-pump-prime',
  elsewhere: false,
})

export const sparkChecks: Readonly<Record<string, Observation>> = {
  'spark-on-tester': onTester,
  'swap-coils': onTester,
  'swap-coils-hot': onTester,
  'swap-caps': onTester,
  'known-good-coil': onTester,
  'known-good-module': onTester,
  'known-good-condenser': onTester,
  'known-good-igniter-output': onTester,
  'spark-when-hot': onTester,
  'spark-strength': howFar,
  'swap-coils-strength': howFar,
  'known-good-coil-strength': howFar,
  'known-good-module-strength': howFar,
  'known-good-condenser-strength': howFar,
  'spark-old-plug': atOldPlug,
  'spark-new-plug': atOnePlug,
  'spark-old-plug-hot': atOldPlug,
  'spark-stop-unplugged': inOneCap,
  'spark-stop-unplugged-hot': inOneCap,
  'spark-stop-at-plug': sparksAtAll,
  'igniter-ground-jumper': inOneCap,
  'known-good-igniter': inOneCap,
  'spark-run-bridged': inOneCap,
  'spark-fed': inOneCap,
  'spark-run-parted': sparksAtAll,
  'spark-at-off': atOff,
  'leak-in-the-dark': leaks([]),
  'leaks-of-one-side': leaks(['coil', 'lead', 'cap']),
  'warmed-spark': warmedSpark,
  'cold-spray': coldSpray,
}
