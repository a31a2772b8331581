import type { Case } from '../../../server/knowledge/case.ts'
import type { Knowledge } from '../../../server/knowledge/knowledge.ts'
import { between, happens, type Random, seedOf } from '../../../server/practice/world/chance.ts'
import { drawMeter } from '../../../server/practice/world/meter.ts'
import { partNamed } from '../../../server/practice/world/sheet.ts'
import { drawn as drawIndex, seeded } from '../../bench/random.ts'
import { circuitOf } from './circuit.ts'
import { complains } from './complaints.ts'
import { effects } from './effects/index.ts'
import { drawGoodPart, type GoodPart } from './good-part.ts'
import { runsOtherwise } from './otherwise.ts'
import { drawPerson } from './person.ts'
import { allTogether } from './standing.ts'
import type { HiddenFault, Weather, World } from './world.ts'

/** The weather that jobs are worked in. */
export const climates = ['20', 'mixed', 'cold'] as const
export type Climate = (typeof climates)[number]

/** How often the good parts and how badly it has failed are drawn again, then how often another fault. */
const tries = 60
const most = 20

/**
 * A machine that does what the owner complains of. Base rates say which fault is hidden, and nothing else; how
 * badly it has failed is drawn until the physics of the world makes that complaint of it.
 */
export function drawWorld(knowledge: Knowledge, kase: Case, seed: number, climate: Climate): World {
  const random = seeded(seedOf(seed, climate, 'world'))
  const { machine, complaint } = kase
  const rest = {
    // Else the same parts would look worn, and the same hands slip, in every weather.
    seed: seedOf(seed, climate),
    machine,
    circuit: circuitOf(machine.id),
    complaint: complaint.id,
    renewed: new Set<string>(),
    weather: drawWeather(climate, random),
    person: drawPerson(random),
    meter: meterInHand(knowledge, [...knowledge.meters.keys()][0]!, random),
  }
  for (let k = 0; k < most; k += 1) {
    const names = drawTruth(kase, random)
    const world = drawFaults(rest, names, random)
    if (world !== null) return world
  }
  throw new Error(
    `No fault of ${complaint.id} on ${machine.id} makes that complaint in this world.`,
  )
}

/** Cheap dial meters show over-range as a lone 1. Common practice, no published source. */
const meterInHand = (knowledge: Knowledge, id: string, random: Random) => ({
  ...drawMeter(knowledge, id, random),
  showsOne: id === 'pocket',
})

function drawTruth({ model }: Case, random: Random): readonly string[] {
  const index = drawIndex(
    model.cutSets.map(({ prior }) => prior),
    random,
  )
  return model.cutSets[index]!.faults
}

/** Null where these faults never make the complaint: the owner would have come with another one. */
function drawFaults(
  rest: Omit<World, 'good' | 'faults' | 'elsewhere'>,
  names: readonly string[],
  random: Random,
): World | null {
  const elsewhere = names.length === 0
  for (let k = 0; k < tries; k += 1) {
    const parts = rest.machine.parts
    const good = new Map(parts.map((part) => [part.id, drawGoodPart(part, random)]))
    const faults = names.map((name) => drawFault(rest, good, name, random))
    const world = { ...rest, elsewhere, good, faults }
    const came = asItCame(world)
    const isIt = complains({ ...came, doing: { certain: true } }) && runsOtherwise(came)
    if (elsewhere || isIt) return world
  }
  return null
}

/** The machine before anybody has touched it. */
export function asItCame(world: World) {
  const standing = allTogether(world.machine.outputs.map(({ id }) => id))
  const random = seeded(seedOf(world.seed, 'as it came'))
  return { world, standing, clock: 0, random, doing: {} }
}

function drawFault(
  { machine, complaint }: Pick<World, 'machine' | 'complaint'>,
  good: ReadonlyMap<string, GoodPart>,
  name: string,
  random: Random,
): HiddenFault {
  const dot = name.indexOf('.')
  const [part, mode] = [name.slice(0, dot), name.slice(dot + 1)]
  const { kind, role } = partNamed(machine, part)
  const effect = effects[kind]?.[mode]
  if (effect === undefined) {
    throw new Error(
      `The literal person does not know what "${mode}" does to a ${kind}: add it to tests/person/world/effects/.`,
    )
  }
  const { ohms, peak } = good.get(part)!
  return { part, mode, effect: effect({ random, complaint, role, ohms, volts: peak }) }
}

/** Parts are as warm as the air, within some kelvin; now and then one was brought in from the cold. From memory. */
function drawWeather(climate: Climate, random: Random): Weather {
  const air =
    climate === '20' ? 20 : climate === 'cold' ? -25 : Math.round(between(random, -25, 30))
  const broughtIn = climate === 'mixed' && air > 5 && happens(random, 0.1)
  const parts = broughtIn ? air - between(random, 10, 25) : air + between(random, -2, 2)
  return { air, parts }
}
