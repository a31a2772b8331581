import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { leftWords } from '../../server/practice/page/words.ts'
import type { RoundEvent, StoredRound } from '../../server/practice/record/events.ts'
import { knownAfter } from '../../server/practice/round/belief.ts'
import { hiddenOf, roundStanding } from '../../server/practice/round/standing.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import type { Hidden } from '../../server/practice/seen/hidden.ts'
import { worthOf } from '../../server/practice/tool/compare.ts'
import { drawFor, hardness } from '../../server/practice/tool/level.ts'
import { resultOf } from '../../server/practice/tool/result.ts'
import { movedMost, toldApart } from '../../server/practice/tool/telling.ts'
import { toolWalk } from '../../server/practice/tool/walk.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const pedlar = { machine: 'pedlar-1c', complaint: 'no-spark' } as const

/** A round on the pedlar with these events after the first. */
function round(seed: string, ...events: readonly RoundEvent[]) {
  const opened = { kind: 'opened', ...pedlar, level: 'any', seed, draw: 0, who: '' } as const
  const all = [opened, ...events].map((event) => ({ event, at: new Date(0) }))
  const stored: StoredRound = { id: 1, version: all.length, opened, events: all }
  return roundStanding(knowledge, stored)!
}

const made = (check: string): RoundEvent => ({ kind: 'made', check, pull: 'brisk' })

/** The first seed that hides this fault in the pedlar. */
function seedHiding(fault: string): string {
  for (let seed = 0; seed < 5000; seed += 1) {
    if (hiddenOf(knowledge, { ...pedlar, seed: String(seed), draw: 0 })!.faults[0] === fault) {
      return String(seed)
    }
  }
  throw new Error(`no seed hides ${fault}`)
}

describe('the tool at the practice bench', () => {
  it('names what is hidden in most machines, and a wrong part in few', async () => {
    const walks = []
    for (const [seed, kase] of shippedCases().entries()) {
      walks.push(await toolWalk(drawHidden(knowledge, kase, seed)))
    }
    const share = (count: number) => count / walks.length
    expect(walks.length).toBeGreaterThan(100)
    expect(share(walks.filter(({ right }) => right).length)).toBeGreaterThan(0.7)
    const wrong = walks.filter(({ right, end }) => !right && end.kind === 'named')
    expect(share(wrong.length)).toBeLessThan(0.1)
  })

  it('finds an easy draw no harder than the first, and a hard one no easier', async () => {
    const at = async (level: 'any' | 'easy' | 'hard') => {
      const wish = { ...pedlar, seed: 'spring', level }
      return hiddenOf(knowledge, { ...wish, draw: await drawFor(knowledge, wish) })!
    }
    const [easy, any, hard] = [await at('easy'), await at('any'), await at('hard')]
    expect(hardness(easy)).toBeLessThanOrEqual(hardness(any))
    expect(hardness(hard)).toBeGreaterThanOrEqual(hardness(any))
    const steps = async (hidden: Hidden) => (await toolWalk(hidden)).steps.length
    expect(await steps(hard)).toBeGreaterThan(await steps(easy))
  })
})

describe('what a round was worth', () => {
  it('says that a dear check could have been spared by a cheap one', () => {
    const [worth] = worthOf(round('1', made('peak-voltage.pickup.magneto-plug')))
    expect(worth!.cheaper!.minutes).toBeLessThan(0.6 * worth!.made.minutes)
  })

  it('says that a question was settled before, where nothing is left to tell', () => {
    const seed = seedHiding('exciter.open')
    const found = [
      'winding-resistance.exciter.igniter-plug',
      'winding-resistance.exciter.magneto-plug',
      'winding-resistance.exciter.magneto-plug',
      'wire-end-to-end.wires-exciter',
    ]
    const late = [...found, 'cap-resistance.cap'].map(made)
    const worths = worthOf(round(seed, ...late))
    expect(worths[0]).toMatchObject({ settled: false })
    expect(worths.at(-2)!.after.suspects[0]).toMatchObject({ part: 'exciter' })
    expect(worths.at(-1)).toMatchObject({ settled: true })
  })

  it('says what each check could tell apart, and what it moved', () => {
    const seed = seedHiding('exciter.open')
    const { hidden, kase, made: all } = round(seed, made('winding-resistance.exciter.igniter-plug'))
    const [before, after] = [knownAfter(hidden, []), knownAfter(hidden, all)]
    const { showing, otherwise } = toldApart(kase.model, all[0]!.card.id, before)
    expect(showing).not.toContain('exciter')
    expect(otherwise).toEqual(['exciter'])
    expect(movedMost(before, after)!.part).toBe('exciter')
    expect(movedMost(before, before)).toBeUndefined()
  })

  it('counts minutes and set-ups once, and what is put back', () => {
    const check = 'winding-resistance.pickup.igniter-plug'
    const once = round('1', made(check))
    expect(once.setups.map(({ id }) => id)).toEqual(['access engine-cover', 'unplug igniter-plug'])
    const twice = round('1', made(check), made(check))
    expect(twice.minutes - once.minutes).toBe(1)
    expect(twice.made.map(({ take }) => take)).toEqual([1, 2])
    const back = round('1', made(check), { kind: 'back', setups: ['unplug igniter-plug'] })
    expect(back.minutes - once.minutes).toBe(0.5)
    expect(back.setups.map(({ id }) => id)).toEqual(['access engine-cover'])
  })

  it('weighs no reading that was taken through a plug left apart, and says which', () => {
    const there = made('winding-resistance.exciter.magneto-plug')
    const through = made('winding-resistance.exciter.igniter-plug')
    const spoilt = round('1', there, through)
    expect(spoilt.made[1]).toMatchObject({ spoilt: true, seen: { text: 'OL' } })
    const [before, after] = [1, 2].map((n) => knownAfter(spoilt.hidden, spoilt.made.slice(0, n)))
    expect(after!.belief).toEqual(before!.belief)
    expect(leftWords(spoilt.kase, spoilt.made[1]!)).toBe('with the magneto plug still apart')
    // What is apart elsewhere spoils nothing.
    const aside = round('1', made('primary-resistance.coil.coil-plug'), through)
    expect(aside.made[1]).toMatchObject({ spoilt: false })
  })

  it('puts all back together before a new part is tried, in minutes of the round', () => {
    const apart = round('1', made('winding-resistance.exciter.magneto-plug'))
    expect(apart.setups.length).toBeGreaterThan(1)
    const seed = '1'
    const good = apart.hidden.parts.includes('igniter') ? 'coil' : 'igniter'
    const bought = round(seed, made('winding-resistance.exciter.magneto-plug'), {
      kind: 'fitted',
      part: good,
    })
    expect(bought.setups).toEqual([])
    const back = apart.setups.reduce((sum, { undo }) => sum + undo!.minutes, 0)
    // A good part is fitted in vain.
    expect(bought.minutes - apart.minutes).toBe(back + bought.fitted[0]!.minutes)
    expect(bought.fitted[0]!.minutes).toBeGreaterThan(0)
    expect(bought.end).toBe('open')
  })

  it('takes an owner for gone once work has begun, as the tool does', () => {
    const { minutes } = knowledge.owner.gone
    const [first, work, late, next] = round(
      '1',
      made('ask-before'),
      made('spark-on-tester.single'),
      made('ask-controls'),
      made('ask-heat'),
    ).made
    expect(work!.card.asked).toBeUndefined()
    const own = (each: typeof first) => each!.minutes - each!.card.minutes
    expect([first, late, next].map(own)).toEqual([0, minutes, 0])
  })

  it('counts the wait for a charged igniter, as long as it is left of it', () => {
    const pulled = made('peak-voltage.exciter.igniter-plug')
    const coil = made('primary-resistance.coil.coil-plug')
    const [alone] = round('1', coil).made
    expect(alone).toMatchObject({ waited: 0 })
    const [, waited] = round('1', pulled, coil).made
    expect(waited!.waited).toBe(5)
    expect(waited!.minutes - alone!.minutes).toBeGreaterThan(4)
    const between = made('winding-resistance.pickup.igniter-plug')
    const sooner = round('1', pulled, between, coil)
    expect(sooner.made[2]!.waited).toBe(5 - sooner.made[1]!.minutes)
    expect(sooner.waited).toBe(sooner.made[2]!.waited)
  })

  it('counts it for the tool as well', async () => {
    const walks = await Promise.all(['1', '2', '3'].map((seed) => toolWalk(round(seed).hidden)))
    const steps = walks.flatMap((walk) => walk.steps)
    expect(steps.some(({ waited }) => waited >= 1)).toBe(true)
  })

  it('is right for who fits the failed part first, and for nobody who guesses', async () => {
    const seed = seedHiding('exciter.open')
    const fitted = (part: string): RoundEvent => ({ kind: 'fitted', part })
    const kase = caseFor(knowledge, pedlar.machine, pedlar.complaint)
    expect(kase.parts.has('igniter')).toBe(true)
    const tool = await toolWalk(round(seed).hidden)
    expect(resultOf(round(seed, fitted('exciter')), tool)).toMatchObject({ right: true, bought: 0 })
    const guessed = round(seed, fitted('igniter'), fitted('exciter'))
    expect(guessed.end).toBe('found')
    expect(resultOf(guessed, tool)).toMatchObject({ right: false, bought: 1 })
    expect(resultOf(round(seed, { kind: 'cannot-tell' }), tool)).toMatchObject({ right: false })
  })
})
