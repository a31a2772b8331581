import { describe, expect, it } from 'vitest'
import { presentSteps } from '../../server/jobs/check/way.ts'
import { allowsFurtherTake } from '../../server/jobs/measuring/judged.ts'
import type { JobEvent, StoredJob } from '../../server/jobs/record/events.ts'
import { asItStands } from '../../server/jobs/standing/as-it-stands.ts'
import { stillApart } from '../../server/jobs/standing/still-apart.ts'
import { wayTo } from '../../server/jobs/standing/way/way-to.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { throughOf } from '../../server/knowledge/instantiate/where/path.ts'
import { drawn, seeded } from '../bench/random.ts'
import { shippedCases } from '../support/knowledge.ts'
import {
  type Instructions,
  type LiteralHands,
  literalHands,
  needsOf,
  toPutBack,
} from '../support/literal-hands.ts'

/** Jobs a case, and what happens in each. */
const jobs = 8
const happenings = 40

/** How often what happens, as weights: one looks at a page far more often than one corrects. */
const happen = { made: 12, skipped: 2, corrected: 1, withdrawn: 1, accepted: 1, repaired: 0.3 }

const manner = { warmth: { kind: 'as the air' } } as const
const touches = [{ kind: 'could-not-tell' }] as const

/** One random job with somebody who does only what its pages say. */
function randomJob(kase: Case, random: () => number) {
  const events: JobEvent[] = []
  const hands = literalHands(kase)
  const readings = new Set<string>()
  const seen = { pages: 0, putBack: 0, kept: 0, stopOff: 0 }
  let skipped = false

  const among = <T>(items: readonly T[]) => items[Math.floor(random() * items.length)]
  const job = (): StoredJob => ({
    id: 1,
    version: events.length,
    events: events.map((event) => ({ event, at: new Date(0) })),
  })
  const goTo = (card: CheckCard) => {
    const page = pageOf(kase, job(), card)
    const before = toPutBack(hands, kase)
    const { putBack, sure } = hands.getReady(page)
    const forbids = card.forbids.map(({ id }) => id)
    if (sure) {
      expect(new Set(putBack)).toEqual(new Set(before.filter((id) => forbids.includes(id))))
    }
    seen.pages += 1
    if (putBack.length > 0) seen.putBack += 1
    if (before.some((id) => !forbids.includes(id))) seen.kept += 1
    return page
  }

  const ways: Readonly<Record<keyof typeof happen, () => void>> = {
    made() {
      const card = among([...kase.checks.values()])!
      const again = readings.has(card.id)
      if (again && !allowsFurtherTake(kase, card.id)) return
      if (card.asked) {
        expect(pageOf(kase, job(), card)).toMatchObject({ putBack: [], ready: [] })
      } else {
        const page = goTo(card)
        expectReady(kase, hands, card, page)
        const stopOff = stopsOff(kase, hands).length > 0
        if (stopOff) seen.stopOff += 1
        hands.make(page)
        expectLeft(kase, hands, page, stopOff)
        skipped = false
      }
      const made = { check: card.id, typed: '', touches }
      events.push(again ? { kind: 'take', ...made } : { kind: 'reading', ...made, manner })
      readings.add(card.id)
    },
    skipped() {
      const card = among([...kase.checks.values()].filter(({ id }) => !readings.has(id)))
      if (card === undefined) return
      // Some have begun by the time they find that they cannot get at it.
      if (random() < 0.5 && !card.asked) goTo(card)
      events.push({ kind: 'skipped', check: card.id, reason: 'Cannot get at it' })
      skipped = true
    },
    corrected() {
      const check = among([...readings])
      if (check) events.push({ kind: 'correction', check, typed: '', touches, manner })
    },
    withdrawn() {
      const check = among([...readings])
      if (check === undefined) return
      events.push({ kind: 'withdrawn', check })
      readings.delete(check)
    },
    accepted() {
      const check = among([...readings])
      if (check) events.push({ kind: 'accepted', check })
    },
    repaired() {
      if (skipped) return
      events.push({ kind: 'repaired', parts: ['any'] })
      hands.getReady({
        putBack: stillApart({ asItStands: asItStands(kase, job()), kase }),
        ready: [],
        steps: [],
      })
      expect(toPutBack(hands, kase)).toEqual([])
      events.push({ kind: 'proved', gone: false, reopened: [] })
    },
  }
  const kinds = Object.keys(happen) as (keyof typeof happen)[]
  const weights = kinds.map((kind) => happen[kind])
  for (let i = 0; i < happenings; i += 1) ways[kinds[drawn(weights, random)]!]()
  return seen
}

/** What the page of a check says to do. */
function pageOf(kase: Case, job: StoredJob, card: CheckCard): Instructions {
  const steps = presentSteps(wayTo(asItStands(kase, job), card), card, kase.machine)
  const under = (title: string) => steps.find((each) => each.title.startsWith(title))?.steps ?? []
  return {
    putBack: under('Put back first'),
    ready: under('Make ready'),
    steps: under('Do this'),
  }
}

/** Nothing is in the way of the check, and all that it needs is off, apart or fitted. */
function expectReady(kase: Case, hands: LiteralHands, card: CheckCard, page: Instructions): void {
  const needs = needsOf(card)
  expect(inTheWay(kase, hands, card)).toEqual([])
  expect(needs.filter((id) => !hands.off.has(id))).toEqual([])
  const untold = stopsOff(kase, hands).filter(
    ({ says }) => !page.ready.some((said) => said.endsWith(says.slice(1))),
  )
  expect(card.engine === 'stopped' ? [] : untold).toEqual([])
}

/**
 * What is in the way of a check, as one sees it at the machine and without the tables that the pages are
 * made from: an engine that turns has its starter on, and every plug joined but those that the check
 * takes apart; a winding that is read through a harness is still joined to it.
 */
function inTheWay({ machine }: Case, { off }: LiteralHands, card: CheckCard): string[] {
  const needs = new Set(needsOf(card))
  const apart = [...off].filter((id) => id.startsWith('unplug ') && !needs.has(id))
  if (card.engine !== 'stopped') {
    const starterOff = [...off].filter((id) => id === 'access recoil-starter')
    return [...apart, ...starterOff]
  }
  const [first] = card.spot?.connector ? [card.spot.connector.id] : []
  const read = machine.parts.find(({ id }) => id === card.part)
  const reach = read?.reach?.find(
    ({ at, for: read }) => at === first && read.includes(card.measurand?.property ?? ''),
  )
  const between = machine.parts
    .filter(({ id }) => reach && throughOf(reach).includes(id))
    .flatMap(({ plugs = [] }) => plugs.map((plug) => `unplug ${plug}`))
  return apart.filter((id) => between.includes(id))
}

/** The stop circuit is whole after every check, and one that took it apart ends with trying it. */
function expectLeft(kase: Case, hands: LiteralHands, page: Instructions, stopWasOff: boolean) {
  expect(stopsOff(kase, hands)).toEqual([])
  expect(page.steps.at(-1) === kase.machine.stop!.try).toBe(stopWasOff)
}

/** What of the stop circuit is apart, with the words that took it apart. */
function stopsOff({ checks, machine }: Case, { off }: LiteralHands) {
  const setups = [...checks.values()].flatMap((card) => card.setups)
  const fitted = new Set(setups.filter(({ stopOff }) => stopOff).map(({ id }) => id))
  const names = [...new Set([...machine.stop!.plugs.map((id) => `unplug ${id}`), ...fitted])]
  return names
    .filter((name) => off.has(name))
    .map((name) => ({ name, says: setups.find(({ id }) => id === name)!.do }))
}

describe('whoever does only what the pages say', () => {
  const cases = shippedCases()

  it.each(cases.map((kase) => [`${kase.complaint.id} on ${kase.machine.id}`, kase] as const))(
    'finds the machine as each check needs it, and can stop it: %s',
    (name, kase) => {
      const walks = Array.from({ length: jobs }, (_, seed) =>
        randomJob(kase, seeded(seed * 1000 + name.length)),
      )
      const total = (of: 'pages' | 'putBack' | 'kept') => walks.reduce((sum, w) => sum + w[of], 0)
      expect(total('pages')).toBeGreaterThan(jobs * 10)
      // Where hardly anything is done with the engine, hardly anything is in its way; a hot run has all put together first.
      const turning = [...kase.checks.values()].filter(
        ({ engine, setups }) =>
          engine !== 'stopped' && !setups.some(({ id }) => id === 'run-until-hot'),
      )
      if (turning.length <= 5) return
      expect(total('putBack')).toBeGreaterThan(jobs)
      expect(total('kept')).toBeGreaterThan(jobs / 2)
    },
  )

  it('takes the stop circuit apart now and then', () => {
    const apart = cases.map((kase) => randomJob(kase, seeded(1)).stopOff)
    expect(apart.filter((count) => count > 0).length).toBeGreaterThan(5)
  })
})
