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
const draws = 9
const checks = 6

/**
 * A fault that is seen, or is not seen, as it is less often than this makes hardly the complaint that somebody came
 * with; one whose readings are each as likely as this does without doubt. From memory.
 */
const plausible = 0.15
const likely = 0.3

/**
 * The machine as badly failed as whoever complains of it has it: of some draws the one whose readings the rows of its
 * fault hold for likeliest, before all those that are out where they should be and good where they should be.
 */
export function asComplainedOf(hidden: Hidden): TrueMachine | null {
  const { truth, knowledge, kase, faults, seed } = hidden
  if (truth === null || faults.every((fault) => isAllOrNothing(hidden, fault))) return truth
  const telling = checksThatTell(hidden)
  let [best, most] = [truth, -1]
  for (let severity = 0; severity < draws; severity += 1) {
    const drawn = trueMachine(knowledge, kase, faults, seed, severity)
    if (drawn === null) return null
    const chances = telling.map((card) => chancesOf({ ...hidden, truth: drawn }, card))
    if (chances.every(({ band }) => band >= likely)) return drawn
    const all = chances.reduce(
      (product, { out, band }) => product * (out < plausible ? 1e-4 : 1) * Math.max(band, 0.01),
      1,
    )
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

/** How far out the rows have it, and whether at all. */
interface Chances {
  readonly band: number
  readonly out: number
}

const certain: Chances = { band: 1, out: 1 }

/** Chances that its fault reads as this machine does, at 20 °C and by steady hands. */
function chancesOf(hidden: Hidden, card: CheckCard): Chances {
  const { measurand, setups } = card
  if (measurand === undefined) return certain
  const stands = new Set(setups.map(({ id }) => id))
  const steady = { take: 1, pull: 'brisk', stands } as const
  const text = byWiring({ ...hidden, air: 20, leads: 0 }, card, steady, () => 0.5)
  if (text === null) return certain
  const { quantity, limits, rpm = pulls.brisk } = measurand
  const isPulled = card.engine === 'cranking' && quantity.corrections.includes('speed')
  const parsed = parseTouches(text, quantity)
  const bands = (parsed.ok ? parsed.touches : []).map((touch) =>
    touch.kind === 'value'
      ? bandOf(isPulled ? (touch.value * rpm) / pulls.brisk : touch.value, limits, quantity)
      : quantity.overRange,
  )
  const row = rowOf(hidden.kase.model, card, hidden.cutSet)
  const good = row[inRange(card)] ?? 0
  const worst = bands.find((band) => band !== 'in range')
  if (worst === undefined) return { band: good, out: good }
  return { band: row[card.outcomes.indexOf(worst ?? '')] ?? 0, out: 1 - good }
}
