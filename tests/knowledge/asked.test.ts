import { describe, expect, it } from 'vitest'
import { minutesOf, together, wayTo } from '../../server/diagnosis/model/stands.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { type ShippedJob, shippedJob } from '../support/shipped-job.ts'

const knowledge = shippedKnowledge()

describe('which cylinder is dead', () => {
  const twin = caseFor(knowledge, 'larkfell-2i', 'one-cylinder-dead')

  it.each([
    ['larkfell-2i', ['left', 'right']],
    ['ferrymere-3t', ['top', 'middle', 'bottom']],
  ])('is one question with an answer for each of them: %s', (machine, outputs) => {
    const { checks } = caseFor(knowledge, machine, 'one-cylinder-dead')
    const asked = [...checks.values()].filter(({ id }) => id.startsWith('ask-which-cylinder'))
    expect(asked).toHaveLength(1)
    const [{ answers = [], outcomes }] = asked as [(typeof asked)[0]]
    expect([...outcomes].sort()).toEqual([...outputs].sort())
    expect(answers.map(({ id }) => id)).toEqual(outcomes)
    for (const { id, says } of answers) expect(says).toContain(id)
  })

  it('speaks for the one that is named, whatever is wrong with it', () => {
    const { checks, cutSets } = twin.model
    const check = checks.find(({ id }) => id === 'ask-which-cylinder')!
    const rowOf = (fault: string) =>
      check.chances[cutSets.findIndex(({ faults }) => faults.join() === fault)]!
    const left = check.outcomes.indexOf('left')
    expect(rowOf('plug-left.fouled')[left]).toBeGreaterThan(0.85)
    expect(rowOf('plug-right.fouled')[left]).toBeLessThan(0.15)
    const outside = cutSets.flatMap(({ faults, at }, c) =>
      faults.length === 0 ? [[at, check.chances[c]![left]]] : [],
    )
    const { right = 0, left: named = 0 } = Object.fromEntries(outside)
    expect(named).toBeGreaterThan(0.85)
    expect(right).toBeLessThan(0.15)
  })
})

describe('what comes before what', () => {
  const bench: Omit<ShippedJob, 'machine' | 'complaint'> = {
    tools: Object.keys(knowledge.tools.tools),
  }
  const proposed = (job: ShippedJob, readings: Readonly<Record<string, string>>) =>
    shippedJob({ ...bench, ...job }, readings).walk.proposals.map(({ check }) => check)

  it('is how far the volts climb, before a battery that boils is held at speed', () => {
    const job = { machine: 'haulmoor-1e', complaint: 'overcharges' }
    const drop = 'charge-wire-drop.wires-sense'
    expect(proposed(job, {})).not.toContain(drop)
    expect(proposed(job, { 'over-volts': '15.6' })).toContain(drop)
  })

  it('is all that was apart put together, before a lamp burns in the place of the fuse', () => {
    const { checks } = caseFor(knowledge, 'haulmoor-1e', 'blows-the-fuse')
    const joined = (check: string) => checks.get(check)!.forbids.map(({ id }) => id)
    expect(joined('lamp-for-fuse')).toContain('unplug output-plug')
    expect(joined('lamp-for-fuse')).toContain('access battery-off')
    expect(joined('lamp-rectifier-off')).not.toContain('unplug output-plug')
    expect(joined('lamp-rectifier-off')).toContain('access battery-off')
  })

  it('is whether all lamps are dim, before each of them is asked after', () => {
    const job = { machine: 'pedlar-1c', complaint: 'lamps-dim' }
    const asksWhich = (readings: Readonly<Record<string, string>>) =>
      proposed(job, readings).some((check) => check.startsWith('ask-which-lamp'))
    expect(proposed(job, {})[0]).toBe('ask-flicker')
    expect(asksWhich({ 'ask-flicker': 'one-lamp' })).toBe(true)
    expect(asksWhich({ 'ask-flicker': 'all-dim' })).toBe(false)
  })

  it.each(['fernslade-1p', 'pedlar-1c'])(
    'is a look at the bulbs where they went one after the other: %s',
    (machine) => {
      const slowly = { 'ask-before': 'nothing', 'ask-lamps-bright': 'slowly' }
      expect(proposed({ machine, complaint: 'dead-lights' }, slowly)[0]).toBe('filaments-look')
    },
  )
})

describe('what an owner is asked', () => {
  it('is how a fuse went only where it is known to have gone', () => {
    const asking = shippedCases().filter(({ checks }) =>
      [...checks.keys()].some((id) => id.startsWith('fuse-witness')),
    )
    expect([...new Set(asking.map(({ complaint }) => complaint.id))]).toEqual(['blows-the-fuse'])
  })

  it('is paid with all that it takes: the run until it is hot as well', () => {
    const { kase } = shippedJob(
      { machine: 'larkfell-2i', complaint: 'dies-hot', who: 'owner', where: 'trailside', kit: [] },
      {},
    )
    const bench = caseFor(knowledge, 'larkfell-2i', 'dies-hot')
    const minutesIn = ({ checks }: typeof bench.model) => {
      const check = checks.find(({ id }) => id === 'spark-old-plug-hot.left')!
      return check.minutes + minutesOf(wayTo(check, together))
    }
    expect(minutesIn(bench.model)).toBeGreaterThan(15)
    expect(minutesIn(kase.model)).toBeGreaterThan(minutesIn(bench.model))
  })

  it('puts off no deed that tells for questions that do not earn their minutes', () => {
    const open: ShippedJob = {
      machine: 'pedlar-1c',
      complaint: 'no-spark',
      who: 'owner',
      where: 'trailside',
      kit: ['plug-wrench', 'light'],
      tools: ['plug-wrench', 'torch'],
      meter: 'pocket',
    }
    const asked: boolean[] = []
    const readings: Record<string, string> = {}
    for (let most = 0; most < 4; most++) {
      const { walk, kase } = shippedJob(open, readings)
      if (walk.step.kind !== 'ask') break
      const { check } = walk.step.proposal
      const { asked: isAsked = false, outcomes } = kase.checks.get(check)!
      asked.push(isAsked)
      readings[check] = outcomes.at(-1)!
    }
    expect(asked).toHaveLength(4)
    expect(asked).toContain(false)
  })
})
