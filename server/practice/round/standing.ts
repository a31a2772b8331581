import { isDeepStrictEqual } from 'node:util'
import { latestOf } from '../../jobs/measuring/latest.ts'
import type { Case, CheckCard, SetupCard } from '../../knowledge/case.ts'
import { fits } from '../../knowledge/fits.ts'
import { stays } from '../../knowledge/instantiate/setup-cards.ts'
import { caseFor } from '../../knowledge/instantiate.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Opened, StoredRound } from '../record/events.ts'
import { drawHidden } from '../seen/draw.ts'
import type { Hidden } from '../seen/hidden.ts'
import { look, type Seen } from '../seen/look.ts'
import type { Pull } from '../seen/making.ts'
import { seedOf } from '../world/chance.ts'
import { minutesToMake, minutesToReach, needsOf } from './needs.ts'
import { after, atRest, minutesBack, waitFor } from './waits.ts'

/** One time that a check was made in a round. */
export interface Made {
  readonly card: CheckCard
  /** How often it had been made by then, itself counted in. */
  readonly take: number
  /** Something had come back from it before. */
  readonly again: boolean
  readonly pull: Pull
  readonly seen: Seen
  /** With what was made ready for it, with reaching who is asked, and with waiting. */
  readonly minutes: number
  /** Minutes of these that were nothing but waiting. */
  readonly waited: number
  /** What stood apart, off or fitted before it, and what was in its way and stayed. */
  readonly before: readonly SetupCard[]
  readonly inTheWay: readonly SetupCard[]
  /** Without that it would have come out otherwise, so that it tells nothing of what it was made for. */
  readonly spoilt: boolean
}

/** A part that was bought and fitted. */
export interface Fitted {
  readonly part: string
  readonly right: boolean
  /** Of fitting it; those of the round where it was good. */
  readonly minutes: number
  readonly price: number
  /** So many checks had been made by then. */
  readonly after: number
}

/** What was done between checks: put back, or a part fitted. */
export interface Between {
  /** So many checks had been made by then. */
  readonly after: number
  /** What was put back; before a part is tried, and at the end, all of it. */
  readonly back: readonly SetupCard[]
  /** Of putting back, with waiting. */
  readonly minutes: number
  readonly waited: number
  readonly fitted?: Fitted
}

/** Where a round stands, from its events and its seed. */
export interface RoundStanding {
  readonly round: StoredRound
  readonly knowledge: Knowledge
  readonly hidden: Hidden
  readonly kase: Case
  readonly made: readonly Made[]
  /** What is apart, off or fitted, in the order in which it came to be so. */
  readonly setups: readonly SetupCard[]
  readonly minutes: number
  /** Minutes of these that were nothing but waiting. */
  readonly waited: number
  /** When the engine last turned, minutes of the round; null where it has not. */
  readonly turnedAt: number | null
  /** How often somebody asked what the tool thinks, and whether that was the last thing that happened. */
  readonly asked: number
  readonly askedLast: boolean
  readonly fitted: readonly Fitted[]
  readonly between: readonly Between[]
  readonly end: 'open' | 'found' | 'cannot tell'
}

/** The machine of a round; null where its machine or complaint is no longer among the trees. */
export function hiddenOf(
  knowledge: Knowledge,
  { machine, complaint, seed, draw }: Pick<Opened, 'machine' | 'complaint' | 'seed' | 'draw'>,
): Hidden | null {
  const [sheet, tree] = [knowledge.machines.get(machine), knowledge.complaints.get(complaint)]
  if (sheet === undefined || tree === undefined || !fits(tree, sheet)) return null
  return drawnLately(knowledge, `${machine} ${complaint} ${draw} ${seed}`, () =>
    drawHidden(knowledge, caseFor(knowledge, machine, complaint), seedOf(seed, draw)),
  )
}

/** Every page of a round looks at the same machine. */
const drawnLately = latestOf<Knowledge, Hidden>(64)

/** Replays the events of a round; null as in `hiddenOf`. */
export function roundStanding(knowledge: Knowledge, round: StoredRound): RoundStanding | null {
  const hidden = hiddenOf(knowledge, round.opened)
  if (hidden === null) return null
  let now: RoundStanding = {
    ...{ round, knowledge, hidden, kase: hidden.kase },
    ...{
      made: [],
      setups: [],
      ...atRest,
      waited: 0,
      asked: 0,
      askedLast: false,
      fitted: [],
      between: [],
      end: 'open',
    },
  }
  for (const { event } of round.events) {
    now = { ...now, askedLast: false }
    switch (event.kind) {
      case 'made':
        now = afterCheck(now, event.check, event.pull)
        break
      case 'back':
        now = afterPutBack(now, new Set(event.setups))
        break
      case 'asked':
        now = { ...now, asked: now.asked + 1, askedLast: true }
        break
      case 'fitted':
        now = afterFitting(now, event.part)
        break
      case 'cannot-tell':
        now = { ...afterPutBack(now, all(now)), end: 'cannot tell' }
        break
      case 'opened':
        break
    }
  }
  return now
}

/** A check that the knowledge no longer has leaves no trace. */
function afterCheck(now: RoundStanding, check: string, pull: Pull): RoundStanding {
  const card = now.kase.checks.get(check)
  if (card === undefined) return now
  const before = now.made.filter((each) => each.card.id === check)
  const take = 1 + before.length
  const again = before.some((each) => each.seen.kind !== 'barred')
  const held = new Set(now.setups.map(({ id }) => id))
  const needs = needsOf(now.setups, card)
  const stands = new Set([...held, ...needs.map(({ id }) => id)])
  const seen = look(now.hidden, card, { take, pull, stands })
  const own = new Set(card.setups.map(({ id }) => id))
  const inTheWay = now.setups.filter(
    ({ id }) => !card.asked && !own.has(id) && card.forbids.some((each) => each.id === id),
  )
  const cleared = new Set([...stands].filter((id) => !inTheWay.some((each) => each.id === id)))
  const spoilt =
    inTheWay.length > 0 &&
    !isDeepStrictEqual(seen, look(now.hidden, card, { take, pull, stands: cleared }))
  const waited = waitFor(now.knowledge, card, needs, now)
  const reached = minutesToReach(now.knowledge.owner, card, now.made.at(-1)?.card)
  const minutes = waited + reached + minutesToMake(card, needs)
  const made: Made = {
    ...{ card, take, again, pull, seen, minutes, waited, before: now.setups },
    ...{ inTheWay, spoilt },
  }
  return {
    ...now,
    made: [...now.made, made],
    setups: [...now.setups, ...needs.filter(stays)],
    ...after(now, card, minutes),
    waited: now.waited + waited,
  }
}

/** @param fitted the part that all is put back for */
function afterPutBack(
  now: RoundStanding,
  names: ReadonlySet<string>,
  fitted?: Fitted,
): RoundStanding {
  const back = now.setups.filter(({ id }) => names.has(id))
  const { minutes, waited } = minutesBack(now.knowledge, back, now)
  const between: Between = {
    ...{ after: now.made.length, back, minutes, waited },
    ...(fitted && { fitted }),
  }
  return {
    ...now,
    setups: now.setups.filter(({ id }) => !names.has(id)),
    minutes: now.minutes + minutes,
    waited: now.waited + waited,
    between: back.length === 0 && !fitted ? now.between : [...now.between, between],
  }
}

const all = ({ setups }: RoundStanding): ReadonlySet<string> => new Set(setups.map(({ id }) => id))

function afterFitting(now: RoundStanding, part: string): RoundStanding {
  const right = now.hidden.parts.includes(part)
  const kind = now.kase.machine.parts.find(({ id }) => id === part)?.kind ?? ''
  const cost = now.knowledge.partKinds.get(kind)?.cost
  const fitted: Fitted = {
    part,
    right,
    minutes: cost?.minutes ?? 0,
    price: cost?.price ?? 0,
    after: now.made.length,
  }
  // Whether it was the part shows on a machine that is all together, and no sooner.
  const together = afterPutBack(now, all(now), fitted)
  return {
    ...together,
    // The failed part is fitted by whoever finds it; a good one is work for nothing.
    minutes: together.minutes + (right ? 0 : fitted.minutes),
    fitted: [...now.fitted, fitted],
    end: right ? 'found' : now.end,
  }
}
