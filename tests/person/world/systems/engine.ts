import { partsIn } from '../../../../server/practice/world/sheet.ts'
import { type Now, nowAt } from '../now.ts'
import { has, type Site, seated } from '../site.ts'
import { celsiusOf } from '../temperature.ts'
import { fuel } from './fuel.ts'
import { ignition } from './ignition.ts'
import { isKeptFromStarting, starting } from './starting.ts'

/** Where the spark is looked at: 0 is none, 1 the spark of a good machine on a modest pull. */
export const jumps = {
  /** A tester that is set as far as the sheet asks: less jumps now and then, and thin. From memory. */
  tester: { weak: 0.25, blue: 0.55 },
  /** What jumps it on every pull, and blue. */
  far: 0.75,
  /** A plug in the open air: a quarter of the voltage. */
  plug: { weak: 0.12, blue: 0.25 },
} as const

/** What the plug of an output leaves of the spark, and what it asks for. A flooded cylinder wets the old plugs. */
export function plugAt(now: Now, output: string): { gives: number; asks: number } {
  if (now.site.standing.newPlug.has(output)) return { gives: 1, asks: 1 }
  const { gives = 1, asks = 1 } = now.effect(seated(now.site, 'plug', output))
  return { gives: isFlooded(now) ? 0 : gives, asks }
}

export const isFlooded = (now: Now): boolean =>
  partsIn(now.site.world.machine, 'flooding').some(({ id }) => now.has(id, 'wet'))

/** In the cold, under pressure and with a full cylinder the plug asks for more of a good spark. From memory. */
const asksInside = { pull: 0.6, cold: 0.7, idle: 0.5, full: 1 }

/**
 * How far the spark of an output exceeds what lights the mixture: 1 and more fires. Above 3000 rpm the cylinder
 * is full, and asks for more.
 */
export function margin(now: Now, output: string, rpm: number): number {
  const { spark } = ignition(now, rpm).outputs.get(output)!
  const { gives, asks } = plugAt(now, output)
  const { air } = now.site.world.weather
  const start = air < 5 ? asksInside.cold : asksInside.pull
  const inside = rpm > 3000 ? asksInside.full : rpm > 900 ? asksInside.idle : start
  return (spark * gives) / (inside * asks)
}

/** The outputs that fire at that speed, with the machine as it stands. */
export function firing(now: Now, rpm: number): readonly string[] {
  if (diesElsewhere(now)) return []
  return now.site.world.machine.outputs
    .map(({ id }) => id)
    .filter(
      (output) => isReady(now, output) && margin(now, output, rpm) >= 1 && hasFuel(now, output),
    )
}

function isReady({ site: { standing } }: Now, output: string): boolean {
  return standing.plugs[output] === 'in' && standing.caps[output] === 'on its plug'
}

/** Water in the fuel that is shaken up: a cause that no tree holds. */
function diesElsewhere({ site: { world, doing, random } }: Now): boolean {
  const shaken = doing.shaken === 'all' || doing.wetted === 'all'
  return world.elsewhere && world.complaint === 'cuts-out' && shaken && random() < 0.85
}

/** A cause that no tree holds: the cylinder gets its spark and burns nothing. The last one, as it happens. */
function isLameElsewhere({ site: { world } }: Now, output: string): boolean {
  const last = world.machine.outputs.at(-1)!.id
  return world.elsewhere && world.complaint === 'one-cylinder-dead' && output === last
}

function hasFuel(now: Now, output: string): boolean {
  if (now.site.standing.fuelOff || isLameElsewhere(now, output)) return false
  const { complaint } = now.site.world
  // After thirty pulls it fires, and warm at once.
  if (complaint !== 'hard-start-cold' && isWorn(now, output)) return false
  if (isStarved(now) || (!idlesAllTheSame.has(complaint) && drawsAir(now, output))) return false
  if (!has(now.site, 'injector')) return true
  const { opens } = fuel(now, 1500)
  return opens.get(output)!
}

/** Too little compression to fire on. Where hot is what one complains of, thick oil seals it cold. From memory. */
export function isWorn(now: Now, output: string): boolean {
  if (!has(now.site, 'cylinder')) return false
  const cylinder = seated(now.site, 'cylinder', output)
  const isSealed =
    now.site.world.complaint === 'hard-start-hot' && celsiusOf(now.site, cylinder) < 40
  return (now.effect(cylinder).gives ?? 1) < (isSealed ? 0.65 : 0.85)
}

/** Whether the spark of an output comes before its time: the key, the box, the points, or its own pickup. */
export function isEarly(now: Now, output: string): boolean {
  const { site } = now
  const { machine } = site.world
  // Points open by the crankshaft, whatever became of the flywheel's key.
  const hasPoints = has(site, 'points')
  return (
    (!hasPoints && partsIn(machine, 'flywheel-key').some(({ id }) => now.has(id, 'sheared'))) ||
    partsIn(machine, 'igniter').some(({ id }) => now.has(id, 'fires-early')) ||
    partsIn(machine, 'points').some(({ id }) => now.has(id, 'opens-early')) ||
    (has(site, 'pickup') && now.has(seated(site, 'pickup', output), 'reversed', 'shifted', 'loose'))
  )
}

/** What starts and then dies burns for some seconds what is there; at idle, or once it is warm, a little is enough. */
const idlesAllTheSame = new Set(['starts-then-dies', 'bogs-limited', 'hard-start-cold'])

const isStarved = (now: Now) =>
  !idlesAllTheSame.has(now.site.world.complaint) && fuelCause(now) !== undefined

/** Whether a cylinder draws air beside its mixture, or too little of both. */
export const drawsAir = (now: Now, output: string): boolean =>
  has(now.site, 'cylinder') && now.has(seated(now.site, 'cylinder', output), 'breathes-badly')

/** Whether the box keeps the speed down although nothing asks for it. */
export const isHeldDown = (now: Now): boolean =>
  partsIn(now.site.world.machine, 'igniter').some(({ id }) => now.has(id, 'stays-limited'))

/** What keeps fuel that lights from an engine with a carburettor, or the fuel itself: role, where there is one. */
export const fuelCause = (now: Now): string | undefined =>
  ['fuel', 'fuel-feed', 'carburettor'].find((role) =>
    partsIn(now.site.world.machine, role).some(({ id }) => now.effect(id).gives === 0),
  )

/** Hot it stands in more fuel than it can light. */
export const isDrowned = (now: Now): boolean =>
  isFlooded(now) ||
  partsIn(now.site.world.machine, 'carburettor').some(({ id }) =>
    now.has(id, 'leaks-over', 'choke-closed'),
  )

/** Hot nothing but vapour comes, or no fuel is pumped. */
export const starvesHot = (now: Now): boolean =>
  (fuelCause(now) !== undefined && !isDrowned(now)) ||
  (has(now.site, 'pump') && fuel(now, 600).pump !== 'hums')

/** What keeps the rope from being pulled: the rope starter is off. */
export function ropeIsOff(now: Now): boolean {
  const { standing, world } = now.site
  const { ropeStarter, noRope } = world.circuit
  if (noRope && isKeptFromStarting(now)) return true
  return standing.flywheelBare || (ropeStarter !== undefined && standing.off.has(ropeStarter))
}

/** rpm of a pull of this person, slower in thick oil. From memory. */
export function ropeSpeed(site: Site): number {
  const { person, weather, circuit } = site.world
  const cold = weather.parts < -10 ? 0.8 : weather.parts < 5 ? 0.92 : 1
  if (circuit.noRope) return starting(nowAt(site)).rpm * cold
  return Math.max(200, person.rpm * cold)
}

/** Whether the engine can be started and idles. A key that has sheared lets it run, badly. */
export function runs(now: Now): boolean {
  const isTurned = !now.site.world.circuit.noRope || starting(now).rpm > 150
  return !ropeIsOff(now) && isTurned && firing(now, 1500).length > 0
}

export const idle = 1500
export const cruise = 3000
export const fullSpeed = 6000
