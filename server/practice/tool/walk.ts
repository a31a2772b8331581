import { setImmediate } from 'node:timers/promises'
import { named } from '../../diagnosis/model/named.ts'
import type { Step } from '../../diagnosis/model/walk.ts'
import { fold } from '../../jobs/record/fold.ts'
import { standingOf } from '../../jobs/standing/standing.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { asJob, type Reading } from '../round/as-job.ts'
import { type Known, knownAfter } from '../round/belief.ts'
import { after, atRest, waitFor } from '../round/waits.ts'
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
  readonly minutes: number
  readonly end: Exclude<Step, { kind: 'ask' }> | { readonly kind: 'gaveUp' }
  /** It named what is hidden. */
  readonly right: boolean
}

/** Whoever has asked for so many checks asks in vain. */
const patience = 40

/** Follows the tool on a hidden fault, every check made as its page says; others are attended to between its steps. */
export async function toolWalk(hidden: Hidden): Promise<ToolWalk> {
  const { kase, knowledge } = hidden
  const steps: ToolStep[] = []
  let known = knownAfter(hidden, [])
  let clock = atRest
  let held: ReadonlySet<string> = new Set()
  while (steps.length < patience) {
    const job = asJob(hidden, steps)
    const { walk } = standingOf(knowledge, { job, folded: fold(job.events), kase })
    if (walk.step.kind !== 'ask') return ended(hidden, steps, walk.step)
    const { check, minutes: planned } = walk.step.proposal
    const card = named(kase.checks, check)
    const needs = card.setups.filter(({ id }) => !held.has(id))
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
  return ended(hidden, steps, { kind: 'gaveUp' })
}

function ended(hidden: Hidden, steps: readonly ToolStep[], end: ToolWalk['end']): ToolWalk {
  return {
    ...{ steps, end },
    minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
    right: end.kind === 'named' && end.parts.every((part) => hidden.parts.includes(part)),
  }
}
