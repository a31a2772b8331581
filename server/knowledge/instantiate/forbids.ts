import { entry } from '../../diagnosis/model/named.ts'
import type { SetupCard } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/machine.ts'
import type { Act } from '../schema/setup.ts'
import type { PlannedCheck } from './planned-check.ts'
import { coverCard, coverId, hinders, kitCard, unplugCard } from './setup-cards.ts'
import { isHot } from './setups.ts'
import { throughOf } from './where/path.ts'

/**
 * What may not hold while a check is made, and has a way back. Most of it follows from what is done: an
 * engine that is cranked or runs has every connector joined that the check does not need apart, and so has what looks
 * at the whole wiring, a reading
 * through a harness has the connectors on its way joined, and covers and what is fitted say themselves
 * what they are in the way of. One that only asks forbids nothing.
 *
 * @param needs what it needs
 */
export function forbidsFor(
  check: PlannedCheck,
  needs: readonly SetupCard[],
  knowledge: Knowledge,
  machine: Machine,
): SetupCard[] {
  if (check.kind.asked) return []
  // What is put back at once was not there before: the engine has to run first, or stop.
  const needed = new Set(needs.filter(({ once }) => !once).map(({ id }) => id))
  const acts = actsOf(check, knowledge)
  const { setups: kit = [], forbids = [] } = check.kind
  const { setups } = knowledge.setups

  const fitted = Object.entries(setups)
    .filter(
      ([id, setup]) => forbids.includes(id) || hinders(setup, acts) || excludes(setups, id, kit),
    )
    .map(([id]) => kitCard(id, knowledge.setups, machine))
  const asIf: readonly Act[] = check.kind.whole ? [...acts, 'cranking'] : acts
  const apart = pluggedFor(check, asIf, machine).map((id) => unplugCard(id, machine))
  const covers = Object.entries(machine.access)
    .filter(([, cover]) => hinders(cover, asIf))
    .map(([id]) => coverCard(id, machine))
  return [...fitted, ...apart, ...covers].filter(({ id, undo }) => undo && !needed.has(id))
}

/**
 * What a check needs and bars what the check does, in words; empty where nothing does. The lint refuses
 * such a check.
 */
export function ownWayBarred(
  check: PlannedCheck,
  needs: readonly SetupCard[],
  knowledge: Knowledge,
  machine: Machine,
): string[] {
  const acts = actsOf(check, knowledge)
  const { setups } = knowledge.setups
  return needs
    .filter(({ id, once }) => {
      const { bars } = setups[id] ?? machine.access[id.replace(coverId(''), '')] ?? {}
      // What is fitted once it has died is not there while it runs.
      const during = once ? acts.filter((act) => act === check.kind.engine) : acts
      return during.some((act) => bars?.includes(act))
    })
    .map(({ id }) => id)
}

function actsOf(check: PlannedCheck, knowledge: Knowledge): Act[] {
  const { engine, meter } = check.kind
  return [
    ...(engine === 'stopped' ? [] : [engine]),
    ...(isHot(check, knowledge) ? (['running'] as const) : []),
    ...(meter === undefined ? [] : (['measuring'] as const)),
  ]
}

/** Two set-ups cannot hold at once, whichever of them says so. */
function excludes(
  setups: Knowledge['setups']['setups'],
  id: string,
  others: readonly string[],
): boolean {
  const excluded = entry(setups, id).excludes ?? []
  return others.some(
    (other) => entry(setups, other).excludes?.includes(id) || excluded.includes(other),
  )
}

/** Connectors that have to be joined, but for those the check itself takes apart. */
function pluggedFor(
  { kind, part, reach }: PlannedCheck,
  acts: readonly Act[],
  { connectors, parts }: Machine,
): readonly string[] {
  if (acts.some((act) => act !== 'measuring')) return Object.keys(connectors)
  if (reach === undefined || part === undefined) return []
  const path = [part, ...parts.filter(({ id }) => throughOf(reach).includes(id))]
  const between = path.flatMap(({ plugs = [] }) => plugs)
  return [...new Set(kind.apart === undefined && reach.at ? [reach.at, ...between] : between)]
}
