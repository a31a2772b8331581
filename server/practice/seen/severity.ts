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
import { sparkOf, sparkSeen } from './wired/spark.ts'

/** So many draws of how badly a part has failed are looked at, and so many checks of each. */
const draws = 18
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
function checksThatTell(hidden: Hidden): readonly CheckCard[] {
  const { kase, cutSet, truth } = hidden
  const isRead = (card: CheckCard) =>
    truth && (propertyOf(truth, card)?.reads || sparkOf(hidden, card) !== undefined)
  const read = [...kase.checks.values()].filter(
    (card) => isRead(card) && shows(kase.model, card.id, cutSet),
  )
  const goodRow = (card: CheckCard) => chanceOf(hidden, card, goodIn(hidden, card))
  // Of all that look at a spark alike, the plainest that does not cure it.
  const telling = read
    .filter((card) => card.measurand !== undefined || goodRow(card) < plausible)
    .sort((a, b) => Number(changesSomething(hidden, a)) - Number(changesSomething(hidden, b)))
  const once = new Map(
    telling.toReversed().map((card) => [card.measurand?.property ?? card.outcomes.join(), card]),
  )
  return [...once.values()].sort((a, b) => goodRow(a) - goodRow(b)).slice(0, checks)
}

/** Whether the wiring of a machine gives a good spark where the rows of its fault hardly know one. */
export const sparksAllTheSame = (hidden: Hidden): boolean =>
  [...hidden.kase.checks.values()]
    .filter((card) => sparkOf(hidden, card) !== undefined && !changesSomething(hidden, card))
    .some((card) => {
      const good = goodIn(hidden, card)
      return (
        chanceOf(hidden, card, good) < plausible &&
        shows(hidden.kase.model, card.id, hidden.cutSet) &&
        shownBy({ ...hidden, air: 20 }, card) === good
      )
    })

function changesSomething(hidden: Hidden, card: CheckCard): boolean {
  const { without, replacing, swapping } = sparkOf(hidden, card) ?? {}
  return [without, replacing, swapping].some((each) => each !== undefined)
}

/** What a good machine shows in a check. */
function goodIn(hidden: Hidden, card: CheckCard): string {
  const { spark = {} } = sparkOf(hidden, card) ?? {}
  const [brightest] = Object.entries(spark).sort(([, a], [, b]) => b - a)
  return brightest?.[0] ?? 'in range'
}

/** Chance of this outcome by the row of what is hidden. */
const chanceOf = (hidden: Hidden, card: CheckCard, outcome: string): number =>
  rowOf(hidden.kase.model, card, hidden.cutSet)[card.outcomes.indexOf(outcome)] ?? 0

const rowOf = (model: Hidden['kase']['model'], { id }: CheckCard, cutSet: number) =>
  numbered(checkNamed(model, id).chances, cutSet)

/** How far out the rows have it, and whether at all. */
interface Chances {
  readonly band: number
  readonly out: number
}

const certain: Chances = { band: 1, out: 1 }

/** Chances that its fault shows as this machine does, at 20 °C and by steady hands. */
function chancesOf(hidden: Hidden, card: CheckCard): Chances {
  const shown = shownBy({ ...hidden, air: 20, leads: 0 }, card)
  if (shown === null) return certain
  const [good, band] = [goodIn(hidden, card), chanceOf(hidden, card, shown)]
  return { band, out: shown === good ? band : 1 - chanceOf(hidden, card, good) }
}

/** The outcome of a check by the wiring, of several places the worst; null where it does not tell. */
function shownBy(hidden: Hidden, card: CheckCard): string | null {
  const { measurand, setups } = card
  const stands = new Set(setups.map(({ id }) => id))
  const steady = { take: 1, pull: 'brisk', stands } as const
  if (measurand === undefined) return sparkSeen(hidden, card, steady, () => 0.5)
  const text = byWiring(hidden, card, steady, () => 0.5)
  if (text === null) return null
  const { quantity, limits, rpm = pulls.brisk } = measurand
  const isPulled = card.engine === 'cranking' && quantity.corrections.includes('speed')
  const parsed = parseTouches(text, quantity)
  const bands = (parsed.ok ? parsed.touches : []).map((touch) =>
    touch.kind === 'value'
      ? bandOf(isPulled ? (touch.value * rpm) / pulls.brisk : touch.value, limits, quantity)
      : quantity.overRange,
  )
  return bands.find((band) => band !== 'in range') ?? 'in range'
}
