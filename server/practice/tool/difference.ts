import type { CheckCard } from '../../knowledge/case.ts'
import type { RoundStanding } from '../round/standing.ts'
import type { Worth } from './compare.ts'
import { movedMost } from './telling.ts'
import type { ToolStep, ToolWalk } from './walk.ts'

/** What the minutes of a round differ in from those of the tool on the same machine. */
export interface Share {
  readonly on: 'own checks' | 'tool checks' | 'again' | 'way' | 'waiting' | 'parts'
  /** How many more the round took, min; below 0 where the tool took more. */
  readonly minutes: number
  /** Checks that only one of the two made, the longest first. */
  readonly checks: readonly CheckCard[]
  /** Whoever took more: as many minutes of it, or more, changed next to nothing. */
  readonly idle: boolean
}

/** A check of either of the two, as both have it. */
type Step = Pick<ToolStep, 'card' | 'take' | 'minutes' | 'waited' | 'before' | 'after'>

/**
 * Where the difference between both sums of minutes came from. The shares add up to it: what both made once costs both
 * the same, and all that is neither a check nor waiting is making ready, putting back, or a part.
 */
export function sharesOf(
  { minutes, waited, fitted }: RoundStanding,
  worths: readonly Worth[],
  tool: ToolWalk,
): readonly Share[] {
  const own = worths.map(({ made, before, after }): Step => ({ ...made, before, after }))
  const good = sum(fitted.map((each) => (each.right ? 0 : each.minutes)))
  const waitedByTool = sum(tool.steps.map((step) => step.waited)) + tool.together.waited
  const [ownWay, toolWay] = [
    minutes - waited - good - sum(own.map(ofItself)),
    tool.minutes - waitedByTool - sum(tool.steps.map(ofItself)),
  ]
  const plain = { checks: [], idle: false }
  const [yours, its] = [onlyIn(own, tool.steps), onlyIn(tool.steps, own)]
  return [
    { on: 'own checks', ...plain, minutes: sum(yours.map(minutesOf)), checks: yours },
    { on: 'tool checks', ...plain, minutes: -sum(its.map(minutesOf)), checks: its },
    onceMore(own, tool.steps),
    { on: 'way', ...plain, minutes: ownWay - toolWay },
    { on: 'waiting', ...plain, minutes: waited - waitedByTool },
    { on: 'parts', ...plain, minutes: good },
  ]
}

/** Checks that are among the first and not among the others, the longest first. */
function onlyIn(some: readonly Step[], others: readonly Step[]): readonly CheckCard[] {
  const made = new Set(others.map(({ card }) => card.id))
  return some
    .filter(({ card, take }) => take === 1 && !made.has(card.id))
    .map(({ card }) => card)
    .sort((a, b) => b.minutes - a.minutes)
}

function onceMore(own: readonly Step[], its: readonly Step[]): Share {
  const again = (steps: readonly Step[]) => steps.filter(({ take }) => take > 1)
  const minutes = sum(again(own).map(ofItself)) - sum(again(its).map(ofItself))
  const idle = again(minutes > 0 ? own : its).filter(
    ({ before, after }) => movedMost(before, after) === undefined,
  )
  return {
    on: 'again',
    minutes,
    checks: [],
    idle: sum(idle.map(ofItself)) >= Math.abs(minutes),
  }
}

/** Minutes of a check without what it needs made ready. */
const minutesOf = ({ minutes }: CheckCard): number => minutes
const ofItself = ({ card }: Step): number => minutesOf(card)

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0)
