import { setImmediate } from 'node:timers/promises'
import { named } from '../../diagnosis/model/named.ts'
import type { Step } from '../../diagnosis/model/walk.ts'
import { fold } from '../../jobs/record/fold.ts'
import { standingOf } from '../../jobs/standing/standing.ts'
import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import { asJob, type Reading } from '../round/as-job.ts'
import { type Known, knownAfter } from '../round/belief.ts'
import { needsOf } from '../round/needs.ts'
import { after, atRest, minutesBack, waitFor } from '../round/waits.ts'
import type { Hidden } from '../seen/hidden.ts'
import { look, type Seen } from '../seen/look.ts'
import { stillThere } from './still-there.ts'

/** One check as the tool asked for it, and what was known before it and after it. */
export interface ToolStep {
  readonly card: CheckCard
  readonly take: number
  readonly seen: Seen
  /** With the way from the machine as it stood, and with waiting. */
  readonly minutes: number
  /** Minutes of these that are nothing but waiting. */
  readonly waited: number
  readonly before: Known
  readonly after: Known
}

/** The tool's own walk on a hidden fault. */
export interface ToolWalk {
  readonly steps: readonly ToolStep[]
  /** Minutes of its checks, and of putting all together again at the end. */
  readonly minutes: number
  /** What was put together at the end. */
  readonly together: Together
  readonly end: Exclude<Step, { kind: 'ask' }> | { readonly kind: 'gaveUp' }
  /** It named what is hidden. */
  readonly right: boolean
}

/** What is still apart, off or fitted at the end is put back, as in a round. */
export interface Together {
  readonly back: readonly SetupCard[]
  readonly minutes: number
  readonly waited: number
}

/** Whoever has asked for so many checks asks in vain. */
const patience = 40

/** Follows the tool on a hidden fault, every check made as its page says; others are attended to between its steps. */
export async function toolWalk(hidden: Hidden): Promise<ToolWalk> {
  const { kase, knowledge } = hidden
  const steps: ToolStep[] = []
  let known = knownAfter(hidden, [])
  let clock = atRest
  let held: readonly SetupCard[] = []
  const together = () => ({ back: held, ...minutesBack(knowledge, held, clock) })
  while (steps.length < patience) {
    const job = asJob(hidden, steps)
    const { walk } = standingOf(knowledge, { job, folded: fold(job.events), kase })
    if (walk.step.kind !== 'ask') return ended(hidden, steps, together(), walk.step)
    const { check, minutes: planned } = walk.step.proposal
    const card = named(kase.checks, check)
    const needs = needsOf(held, card)
    const waited = waitFor(knowledge, card, needs, clock)
    const minutes = planned + waited
    clock = after(clock, card, minutes)
    held = stillThere(held, card)
    const take = 1 + steps.filter((step) => step.card.id === check).length
    const stands = new Set(card.setups.map(({ id }) => id))
    const seen = look(hidden, card, { take, pull: 'brisk', stands })
    const readings: Reading[] = [...steps, { card, seen }]
    const now = knownAfter(hidden, readings)
    steps.push({ card, take, seen, minutes, waited, before: known, after: now })
    known = now
    await setImmediate()
  }
  return ended(hidden, steps, together(), { kind: 'gaveUp' })
}

function ended(
  hidden: Hidden,
  steps: readonly ToolStep[],
  together: Together,
  end: ToolWalk['end'],
): ToolWalk {
  return {
    ...{ steps, together, end },
    minutes: steps.reduce((sum, step) => sum + step.minutes, together.minutes),
    right: end.kind === 'named' && end.parts.every((part) => hidden.parts.includes(part)),
  }
}
