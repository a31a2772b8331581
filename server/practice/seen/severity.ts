import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { bandOf } from '../../measure/decide/bands.ts'
import { parseTouches } from '../../measure/reading/parse-touches.ts'
import { doesOf, type TrueMachine, trueMachine } from '../world/machine.ts'
import { byWiring, shows } from './by-wiring.ts'
import type { Hidden } from './hidden.ts'
import { pulls } from './making.ts'
import { propertyOf } from './moment.ts'

/** So many draws of how badly a part has failed are looked at, and so many checks of each. */
const draws = 12
const checks = 8

/** A reading that a fault gives less often than this is hardly the complaint that somebody came with. From memory. */
const plausible = 0.15

/**
 * The machine as badly failed as whoever complains of it has it: the first draw whose readings the rows of its fault
 * hold for likely, each; or the one that they hold for likeliest.
 */
export function asComplainedOf(hidden: Hidden): TrueMachine | null {
  const { truth, knowledge, kase, faults, seed } = hidden
  if (truth === null || faults.every((fault) => isAllOrNothing(hidden, fault))) return truth
  const telling = checksThatTell(hidden)
  let [best, most] = [truth, -1]
  for (let severity = 0; severity < draws; severity += 1) {
    const drawn = trueMachine(knowledge, kase, faults, seed, severity)
    if (drawn === null) return null
    const chances = telling.map((card) => chanceOf({ ...hidden, truth: drawn }, card))
    if (chances.every((chance) => chance >= plausible)) return drawn
    const all = chances.reduce((product, chance) => product * Math.max(chance, 0.01), 1)
    if (all > most) [best, most] = [drawn, all]
  }
  return best
}

/** Whether it is the same however badly it has failed: broken is broken. */
function isAllOrNothing({ knowledge, kase: { machine } }: Hidden, fault: string): boolean {
  const { adds, addsTimes, toGround, bridges, shorts, gives, above } =
    doesOf(knowledge, machine, fault) ?? {}
  const spans = [addsTimes, toGround, bridges, shorts, above, adds === 'open' ? undefined : adds]
  return spans.every((span) => span === undefined) && gives?.low === gives?.high
}

/** What the fault shows in by the wiring, once for each property, the plainest first. */
function checksThatTell({ kase, cutSet, truth }: Hidden): readonly CheckCard[] {
  const read = [...kase.checks.values()].filter(
    (card) => truth && propertyOf(truth, card)?.reads && shows(kase.model, card.id, cutSet),
  )
  const goodRow = (card: CheckCard) => rowOf(kase.model, card, cutSet)[inRange(card)] ?? 0
  const once = new Map(read.toReversed().map((card) => [card.measurand?.property, card]))
  return [...once.values()].sort((a, b) => goodRow(a) - goodRow(b)).slice(0, checks)
}

const inRange = ({ outcomes }: CheckCard) => outcomes.indexOf('in range')

const rowOf = (model: Hidden['kase']['model'], { id }: CheckCard, cutSet: number) =>
  numbered(checkNamed(model, id).chances, cutSet)

/** Chance that its fault reads as this machine does, good or not, at 20 °C and by steady hands; 1 where it gives none. */
function chanceOf(hidden: Hidden, card: CheckCard): number {
  const { measurand, setups } = card
  if (measurand === undefined) return 1
  const stands = new Set(setups.map(({ id }) => id))
  const steady = { take: 1, pull: 'brisk', stands } as const
  const text = byWiring({ ...hidden, air: 20, leads: 0 }, card, steady, () => 0.5)
  if (text === null) return 1
  const { quantity, limits, rpm = pulls.brisk } = measurand
  const isPulled = card.engine === 'cranking' && quantity.corrections.includes('speed')
  const parsed = parseTouches(text, quantity)
  const bands = (parsed.ok ? parsed.touches : []).map((touch) =>
    touch.kind === 'value'
      ? bandOf(isPulled ? (touch.value * rpm) / pulls.brisk : touch.value, limits, quantity)
      : quantity.overRange,
  )
  const good = rowOf(hidden.kase.model, card, hidden.cutSet)[inRange(card)] ?? 0
  // How far out it is says how bad it is, which is what is looked for: here it only counts whether it is out.
  return bands.every((band) => band === 'in range') ? good : 1 - good
}
