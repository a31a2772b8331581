import { expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { make } from './making.ts'
import { goodMachine, pageOf } from './nothing-wrong.ts'
import { asItCame } from './world/draw.ts'
import { add } from './world/standing.ts'
import type { World } from './world/world.ts'

const knowledge = shippedKnowledge()

/** One case and one good machine for every machine, and each check that reads ohms on it once. */
const machines = [...knowledge.machines.keys()].map((id) => {
  const cases = shippedCases().filter(({ machine }) => machine.id === id)
  const ohms = cases.flatMap((kase) =>
    [...kase.checks.values()]
      .filter(({ measurand, engine }) => measurand && engine === 'stopped')
      .map((card) => [card.id, { kase, card }] as const),
  )
  return { id, reads: [...new Map(ohms).values()], good: goodMachine(knowledge, cases[0]!) }
})

/** What a check neither needs apart nor has joined, by the list above its steps. */
function leftToChance({ machine }: Case, { setups, forbids }: CheckCard): string[] {
  const said = new Set([...setups, ...forbids].map(({ id }) => id))
  return Object.keys(machine.connectors).filter((plug) => !said.has(`unplug ${plug}`))
}

/** What the page spoils where all of that is apart. */
function spoilt(world: World, kase: Case, card: CheckCard): string[] {
  const standing = add('apart', ...leftToChance(kase, card))(asItCame(world).standing)
  const bench = { world, standing, clock: 0 }
  const { incidents } = make(knowledge, kase, bench, pageOf(card), 1, true)
  return incidents.filter(({ kind }) => kind === 'spoilt').map(({ says }) => `${card.id}: ${says}`)
}

/** The same machine with the part that is read broken: what stands in parallel may read in its place. */
const broken = (good: World, { part }: CheckCard): World => ({
  ...good,
  faults: part === undefined ? [] : [{ part, mode: 'open', effect: { series: Infinity } }],
})

it.each(machines)(
  'no reading of ohms on the $id depends on a plug that its page says nothing of',
  ({ reads, good }) => {
    expect(reads.length).toBeGreaterThan(5)
    const worlds = (card: CheckCard) => [good, broken(good, card)]
    expect(
      reads.flatMap(({ kase, card }) => worlds(card).flatMap((world) => spoilt(world, kase, card))),
    ).toEqual([])
  },
)
