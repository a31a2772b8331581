import type { CheckCard } from '../../knowledge/case.ts'
import type { RoundStanding } from '../round/standing.ts'
import type { Worth } from './compare.ts'
import { movedMost } from './telling.ts'
import type { ToolStep, ToolWalk } from './walk.ts'

/** What the minutes of a round differ in from those of the tool on the same machine. */
export interface Share {
  readonly on:
    | 'own checks'
    | 'tool checks'
    | 'again'
    | 'barred'
    | 'way'
    | 'asking'
    | 'waiting'
    | 'parts'
  /** How many more the round took, min; below 0 where the tool took more. */
  readonly minutes: number
  /** Checks that only one of the two made, the longest first. */
  readonly checks: readonly CheckCard[]
  /** Whoever took more: as many minutes of it, or more, changed next to nothing. */
  readonly idle: boolean
}

/** A check of either of the two, as both have it. */
type Step = Pick<ToolStep, 'card' | 'seen' | 'minutes' | 'waited' | 'before' | 'after'>

/**
 * Where the difference between both sums of minutes came from. The shares add up to it: what both made once costs both
 * the same, and all that is neither a check nor waiting is making ready, putting back, reaching the owner, or a part.
 */
export function sharesOf(
  { minutes, waited, fitted }: RoundStanding,
  worths: readonly Worth[],
  tool: ToolWalk,
): readonly Share[] {
  const all = worths.map(({ made, before, after }): Step => ({ ...made, before, after }))
  const [own, its] = [all.filter(cameBack), tool.steps]
  const barred = all.filter((step) => !cameBack(step))
  const good = sum(fitted.map((each) => (each.right ? 0 : each.minutes)))
  const waitedByTool = sum(its.map((step) => step.waited)) + tool.together.waited
  const [ownReach, toolReach] = [reaching(all), reaching(its)]
  const ownWay = minutes - waited - good - ownReach - ofThemselves(all)
  const toolWay = tool.minutes - waitedByTool - toolReach - ofThemselves(its)
  const [yours, only] = [onlyIn(own, its), onlyIn(its, own)]
  const plain = { checks: [], idle: false }
  return [
    { on: 'own checks', ...plain, minutes: sum(yours.map(minutesOf)), checks: yours },
    { on: 'tool checks', ...plain, minutes: -sum(only.map(minutesOf)), checks: only },
    onceMore(own, its),
    { on: 'barred', ...plain, minutes: ofThemselves(barred) },
    { on: 'way', ...plain, minutes: ownWay - toolWay },
    { on: 'asking', ...plain, minutes: ownReach - toolReach },
    { on: 'waiting', ...plain, minutes: waited - waitedByTool },
    { on: 'parts', ...plain, minutes: good },
  ]
}

const cameBack = ({ seen }: Step): boolean => seen.kind !== 'barred'

/** Whether the same had come back from it before. */
const isAgain = ({ card }: Step, i: number, all: readonly Step[]): boolean =>
  all.slice(0, i).some((each) => each.card.id === card.id)

/** Checks that are among the first and not among the others, the longest first. */
function onlyIn(some: readonly Step[], others: readonly Step[]): readonly CheckCard[] {
  const made = new Set(others.map(({ card }) => card.id))
  return some
    .filter((step, i) => !isAgain(step, i, some) && !made.has(step.card.id))
    .map(({ card }) => card)
    .sort((a, b) => b.minutes - a.minutes)
}

function onceMore(own: readonly Step[], its: readonly Step[]): Share {
  const [yours, only] = [own.filter(isAgain), its.filter(isAgain)]
  const minutes = ofThemselves(yours) - ofThemselves(only)
  const idle = (minutes > 0 ? yours : only).filter(
    ({ before, after }) => movedMost(before, after) === undefined,
  )
  return { on: 'again', minutes, checks: [], idle: ofThemselves(idle) >= Math.abs(minutes) }
}

/** Minutes of a check without what it needs made ready. */
const minutesOf = ({ minutes }: CheckCard): number => minutes
const ofThemselves = (steps: readonly Step[]): number => sum(steps.map(({ card }) => card.minutes))

/** What a question costs beyond itself is reaching whoever is asked. */
const reaching = (steps: readonly Step[]): number =>
  sum(steps.map(({ card, minutes, waited }) => (card.asked ? minutes - waited - card.minutes : 0)))

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0)
