import { entry } from '../../diagnosis/model/named.ts'
import type { DoingCard, SetupCard } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/machine.ts'
import type { PlannedCheck } from './planned-check.ts'
import { coverCard, coverId, hinders, kitCard, unplugCard } from './setup-cards.ts'

/**
 * What a check needs, each once: covers first, then the connectors, then what is fitted. A check of an
 * engine that has just died hot is run before anything is in the way of that, but after what it needs to be run.
 */
export function setupsFor(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
): SetupCard[] {
  const { setups } = knowledge.setups
  const covers = coversFor(check, machine).map((id) => coverCard(id, machine))
  const apart = apartFor(check).map((id) => unplugCard(id, machine))
  const kit = (check.kind.setups ?? []).map((id) => kitCard(id, knowledge.setups, machine))
  if (!isHot(check, knowledge)) {
    return [...covers, ...apart, ...kit].map((card) => (card.stopOff ? once(card) : card))
  }
  const heat = kit
    .filter(({ id }) => entry(setups, id).undo === 'fades')
    .map((card) => (card.lasts ? card : once(card)))
  // A leg that has to be in the water while it runs, for instance.
  const madeForHeat = new Set(
    coversServing(
      heat.map(({ id }) => id),
      machine,
    ).map(coverId),
  )
  const isForHeat = ({ id }: SetupCard) => madeForHeat.has(id)
  const fitted = kit.filter(({ id }) => entry(setups, id).undo !== 'fades')
  const isInTheWay = ({ id }: SetupCard) => hinders(entry(setups, id), ['running'])
  return [
    ...covers.filter(isForHeat),
    ...heat,
    ...covers.filter((cover) => !isForHeat(cover)),
    ...apart.map(once),
    ...fitted.map((card) => (isInTheWay(card) ? once(card) : card)),
  ]
}

const once = (card: SetupCard): SetupCard => ({ ...card, once: true })

/** Whether the engine is run first, until it fails. */
export function isHot({ kind }: PlannedCheck, { setups }: Knowledge): boolean {
  return kind.setups?.some((id) => entry(setups.setups, id).undo === 'fades') ?? false
}

/**
 * The last steps of a check, which put back what may not stay as it is: what would be in the way of
 * another run, and the stop circuit, with a word on trying it, since an engine that cannot be stopped
 * must not be started unawares.
 *
 * @param wordsOf what is said of each; left out: as at the bench
 */
export function lastSteps(
  setups: readonly SetupCard[],
  { stop }: Machine,
  wordsOf: (doing: DoingCard) => string = ({ do: says }) => says,
): string[] {
  const back = setups
    .flatMap(({ once, undo }) => (once && undo ? [wordsOf(undo)] : []))
    .toReversed()
  return stop && setups.some(({ stopOff }) => stopOff) ? [...back, stop.try] : back
}

/** Connectors that a check needs apart. */
function apartFor({ kind, part, beside, reach }: PlannedCheck): readonly string[] {
  const here = kind.apart !== undefined && reach?.at !== undefined ? [reach.at] : []
  const whole = kind.apart === 'part' ? ((part ?? beside)?.plugs ?? []) : []
  return [...new Set([...here, ...whole])]
}

/** Covers over what is read or looked at, over the connectors, and over what is fitted. */
export function coversFor(check: PlannedCheck, { access, connectors }: Machine): readonly string[] {
  const { kind, part, beside, reach, swap } = check
  const at = reach?.at === undefined ? [] : [reach.at]
  const overPlugs = [...at, ...apartFor(check)].flatMap((id) => entry(connectors, id).access ?? [])
  const moved = swap ?? []
  const touched = reach === undefined && !kind.asked ? [part, beside, ...moved] : moved
  const overParts = touched.flatMap((each) => each?.access ?? [])
  const forKit = coversServing(kind.setups ?? [], { access })
  return [...new Set([...(reach?.access ?? []), ...overPlugs, ...overParts, ...forKit])]
}

/** Covers that have to be off, and the like, for any of these set-ups. */
function coversServing(setups: readonly string[], { access }: Pick<Machine, 'access'>): string[] {
  return Object.entries(access)
    .filter(([, cover]) => cover.for?.some((setup) => setups.includes(setup)))
    .map(([id]) => id)
}
