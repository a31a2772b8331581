import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { differenceWords } from '../../server/practice/after/difference.ts'
import { presentAfter } from '../../server/practice/after/present.ts'
import type { RoundEvent, StoredRound } from '../../server/practice/record/events.ts'
import { type RoundStanding, roundStanding } from '../../server/practice/round/standing.ts'
import type { Share } from '../../server/practice/tool/difference.ts'
import { type ToolWalk, toolWalk } from '../../server/practice/tool/walk.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()

/** Rounds on machines that differ in what they are made of, each with the tool's walk. */
const begun = [
  { machine: 'pedlar-1c', complaint: 'no-spark', seed: '1' },
  { machine: 'pedlar-1c', complaint: 'no-spark', seed: '6' },
  { machine: 'brackenway-1b', complaint: 'does-not-turn', seed: '2' },
  { machine: 'larkfell-2i', complaint: 'dies-hot', seed: '3' },
]
type Begun = (typeof begun)[number]

function round(of: Begun, events: readonly RoundEvent[]): RoundStanding {
  const opened = { kind: 'opened', ...of, level: 'any', draw: 0, who: '' } as const
  const all = [opened, ...events].map((event) => ({ event, at: new Date(0) }))
  const stored: StoredRound = { id: 1, version: all.length, opened, events: all }
  return roundStanding(knowledge, stored)!
}

const tools = new Map<Begun, ToolWalk>()
beforeAll(async () => {
  for (const of of begun) tools.set(of, await toolWalk(round(of, []).hidden))
})

const made = (check: string): RoundEvent => ({ kind: 'made', check, pull: 'brisk' })
const fitted = (part: string): RoundEvent => ({ kind: 'fitted', part })
const gaveUp: RoundEvent = { kind: 'cannot-tell' }

/** What somebody does who knows nothing: checks, some of them again and again, parts, and things put back. */
const doings = (of: Begun) => {
  const { kase } = round(of, [])
  const walked = tools.get(of)!.steps.map(({ card }) => card.id)
  const check = fc.oneof(
    fc.constantFrom(...kase.checks.keys()),
    fc.constantFrom(...walked),
    fc.constantFrom(...[...kase.checks.keys()].slice(0, 3)),
  )
  const setups = [...new Set([...kase.checks.values()].flatMap((each) => each.setups))]
  return fc.array(
    fc.oneof(
      { weight: 6, arbitrary: check.map(made) },
      { weight: 1, arbitrary: fc.constantFrom(...kase.parts.keys()).map(fitted) },
      {
        weight: 1,
        arbitrary: fc
          .constantFrom(...setups)
          .map(({ id }): RoundEvent => ({ kind: 'back', setups: [id] })),
      },
    ),
    { maxLength: 8 },
  )
}

const pageOf = (of: Begun, events: readonly RoundEvent[]) => {
  const standing = round(of, events)
  const all = standing.end === 'open' ? round(of, [...events, gaveUp]) : standing
  return presentAfter(all, tools.get(of)!)
}

/** Minutes that a sentence states, without those of the one check that it names as the longest. */
const stated = (says: string | undefined): number =>
  [...(says ?? '').matchAll(/(\d+(?:\.\d)?)\smin on/g)].reduce(
    (sum, [, count]) => sum + Number(count),
    0,
  )

const shownAt = (page: ReturnType<typeof pageOf>, label: string): number =>
  Number.parseFloat(page.facts.find((fact) => fact.label === label)!.value)

describe('the difference in minutes', () => {
  it('is what the stated shares add up to, whatever somebody did', () => {
    let longer = 0
    for (const of of begun) {
      fc.assert(
        fc.property(doings(of), (events) => {
          const page = pageOf(of, events)
          const difference = shownAt(page, 'Your minutes') - shownAt(page, 'The tool’s minutes')
          const [lead = '', ...shares] = page.difference
          expect(page.difference.length).toBeLessThanOrEqual(3)
          const said = Number(/\d+(\.\d)?/.exec(lead)?.[0] ?? 0)
          expect(said * (lead.includes('less') ? -1 : 1)).toBeCloseTo(difference, 6)
          const [more, less] = ['You', 'The tool'].map((who) =>
            stated(shares.find((says) => says.startsWith(`${who} spent more: `))),
          )
          expect(more! - less!).toBeCloseTo(difference, 6)
          longer += difference > 0 ? 1 : 0
        }),
        { numRuns: 12 },
      )
    }
    expect(longer).toBeGreaterThan(3)
  })

  it('adds up to the tenth where minutes are no tenths', () => {
    const span = fc.double({ min: -30, max: 30, noNaN: true })
    const all = ['own checks', 'tool checks', 'again', 'way', 'waiting', 'parts'] as const
    fc.assert(
      fc.property(fc.tuple(span, span, span), ([again, way, waiting]) => {
        const minutes: Partial<Record<Share['on'], number>> = { again, way, waiting }
        const shares = all.map((on) => ({ on, minutes: minutes[on] ?? 0, checks: [], idle: false }))
        const [own, its] = [100 + again + way + waiting, 100]
        const [, ...says] = differenceWords(own, its, shares)
        const [more, less] = ['You', 'The'].map((who) =>
          stated(says.find((each) => each.startsWith(who))),
        )
        expect(more! - less!).toBeCloseTo(Number(own.toFixed(1)) - its, 6)
      }),
    )
  })

  it('names the longest of the checks that only one of the two made', () => {
    const [of] = begun as [Begun]
    const walked = new Set(tools.get(of)!.steps.map(({ card }) => card.id))
    const { kase } = round(of, [])
    const others = [...kase.checks.values()].filter(({ id, asked }) => !asked && !walked.has(id))
    const longest = others.reduce((a, b) => (b.minutes > a.minutes ? b : a))
    const short = others.find(({ minutes }) => minutes < longest.minutes)!
    const { difference } = pageOf(of, [made(short.id), made(longest.id)])
    expect(difference[1]).toContain(
      `${longest.minutes + short.minutes}\u00a0min on 2 checks that it did not make, the longest of them “${longest.title}” with ${longest.minutes}\u00a0min of its own`,
    )
    expect(difference[2]).toMatch(/\d checks that you did not make, the longest of them “/)
  })

  it('says what went into takes that changed nothing, and into good parts', () => {
    const [of] = begun as [Begun]
    const { kase, hidden } = round(of, [])
    const [first] = tools.get(of)!.steps
    const asked = Array.from({ length: 12 }, () => made(first!.card.id))
    const good = [...kase.parts.keys()].find((part) => !hidden.parts.includes(part))!
    const standing = round(of, [...asked, fitted(good)])
    const [{ minutes }] = standing.fitted as [RoundStanding['fitted'][0]]
    const says = pageOf(of, [...asked, fitted(good)]).difference.join(' ')
    expect(says).toMatch(/min on checks made once more, which changed next to nothing/)
    expect(says).toContain(`${minutes}\u00a0min on parts that were good`)
  })

  it('keeps apart what could not be made, and calls no check made once more that nothing came back from', () => {
    const [of] = begun as [Begun]
    const { kase } = round(of, [])
    const rope = 'access recoil-starter'
    const behind = [...kase.checks.values()].find(
      ({ setups, loose }) => !loose && setups.some(({ id }) => id === rope),
    )!
    const tester = made('spark-on-tester.single')
    const back: RoundEvent = { kind: 'back', setups: behind.setups.map(({ id }) => id) }
    const events = [made(behind.id), tester, back, tester]
    const standing = round(of, events)
    expect(standing.made.map(({ seen }) => seen.kind === 'barred')).toEqual([false, true, false])
    const page = pageOf(of, events)
    const minutes = kase.checks.get('spark-on-tester.single')!.minutes
    expect(page.difference.join(' ')).toContain(
      `${minutes}\u00a0min on checks that could not be made as the machine stood`,
    )
    expect(page.difference[1]).not.toContain('made once more')
    expect(JSON.stringify(page.own)).not.toContain('Once more')
  })

  it('says what it took to reach the owner once they had gone', () => {
    const [of] = begun as [Begun]
    const { kase } = round(of, [])
    const asked = [...kase.checks.values()].filter((card) => card.asked)
    const looked = [...kase.checks.values()].find((card) => !card.asked)!
    const events = [...asked.slice(0, 1), looked, ...asked.slice(1, 3)].map(({ id }) => made(id))
    expect(pageOf(of, events).difference.join(' ')).toContain(
      `${knowledge.owner.gone.minutes}\u00a0min on reaching the owner once they had gone`,
    )
  })

  it('is said in one sentence where both did the same', () => {
    const says = differenceWords(12, 12, [])
    expect(says).toEqual(['You took as many minutes as the tool.'])
  })
})
