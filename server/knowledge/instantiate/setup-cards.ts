import { entry } from '../../diagnosis/model/named.ts'
import type { CheckCard, DoingCard, SetupCard } from '../case.ts'
import type { Connector, Machine } from '../schema/machine.ts'
import type { Act, Doing } from '../schema/setup.ts'
import type { Setups } from '../schema/tables.ts'
import { keptFor } from './kept-for.ts'
import { type Fillings, fill, fillingsOf } from './words.ts'

/** By the table in which they stand, and by machine: every check asks for those that it needs or that are in its way. */
const cardsFor = keptFor((_table: object, _machine: Machine) => new Map<string, SetupCard>())

function keptCard(id: string, table: object, machine: Machine, make: () => SetupCard): SetupCard {
  const cards = cardsFor(table, machine)
  const card = cards.get(id) ?? make()
  cards.set(id, card)
  return card
}

/** Taking off a cover. */
export function coverCard(id: string, machine: Machine): SetupCard {
  return keptCard(id, machine.access, machine, () => {
    const { undo, ...made } = entry(machine.access, id)
    return { id: coverId(id), ...doingCard(made, {}), undo: doingCard(undo, {}) }
  })
}

/** What a cover off is called among the set-ups. */
export const coverId = (cover: string): string => `access ${cover}`

/** It only leads to what is read: a cover off or a connector apart, and nothing fitted or run. */
export const isOnTheWayThere = ({ id }: Pick<SetupCard, 'id'>): boolean =>
  id.startsWith(coverId('')) || id.startsWith(unplugId(''))

/** What a connector apart is called among the set-ups. */
export const unplugId = (connector: string): string => `unplug ${connector}`

/** Taking a connector apart. */
export function unplugCard(id: string, machine: Machine): SetupCard {
  return keptCard(id, machine.connectors, machine, () => {
    const connector = entry(machine.connectors, id)
    const { undo = joined(connector), ...made } = connector.unplug
    const stopOff = machine.stop?.plugs.includes(id) ?? false
    return {
      id: unplugId(id),
      ...doingCard(made, {}),
      undo: doingCard(undo, {}),
      ...(stopOff && { stopOff }),
    }
  })
}

/** Minutes to join a connector again. From memory. */
const joinMinutes = 0.5

/** How a connector is joined again where its sheet says nothing else. */
function joined({ name, face }: Connector): NonNullable<SetupCard['undo']> {
  const holds =
    face.latch === 'none' ? 'pull at it: it must hold' : 'push until you hear its latch click'
  return { do: `Join the ${name} again and ${holds}.`, minutes: joinMinutes }
}

/** Fitting, taking off or making ready what is no connector and no cover, in the words of this machine. */
export function kitCard(id: string, { setups }: Setups, machine: Machine): SetupCard {
  return keptCard(id, setups, machine, () => {
    const { undo, lasts, stopOff = false, ...made } = entry(setups, id)
    const fillings = fillingsOf(machine)
    return {
      id,
      ...doingCard(made, fillings),
      ...(typeof undo === 'object' && { undo: doingCard(undo, fillings) }),
      ...(lasts && { lasts: doingCard(lasts, fillings) }),
      ...(stopOff && { stopOff }),
    }
  })
}

/** What to do, in the words of this machine. */
function doingCard({ do: says, phone, minutes }: Doing, fillings: Fillings): DoingCard {
  return {
    do: fill(says, fillings),
    ...(phone !== undefined && { phone: fill(phone, fillings) }),
    minutes,
  }
}

/** What is said of it to an owner. */
export const phoneWords = ({ do: says, phone }: DoingCard): string => phone ?? says

/** It goes by itself, as heat does. */
export const fades = ({ once, undo, lasts }: SetupCard): boolean =>
  lasts !== undefined || (once === true && undo === undefined)

/** It stays after the check that needs it, until somebody puts it back. */
export const stays = ({ once, lasts }: SetupCard): boolean => !once && lasts === undefined

/** Minutes of a check with what its own last steps put back, or what fades with it, way back and all. */
export function ownMinutes({ minutes, setups }: Pick<CheckCard, 'minutes' | 'setups'>): number {
  return setups
    .filter(({ once }) => once)
    .reduce((sum, setup) => sum + setup.minutes + (setup.undo?.minutes ?? 0), minutes)
}

/** Whether a cover or a set-up is in the way of any of these, but for what needs it. */
export function hinders(
  { bars = [], spoils = [] }: Pick<Setups['setups'][string], 'bars' | 'spoils'>,
  acts: readonly Act[],
): boolean {
  return acts.some((act) => bars.includes(act) || spoils.includes(act))
}
