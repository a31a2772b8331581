import { describe, expect, it } from 'vitest'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { make } from './making.ts'
import { goodMachine, pageOf } from './nothing-wrong.ts'
import type { CheckOnPage } from './page.ts'
import { asItCame } from './world/draw.ts'
import { add, type Change } from './world/standing.ts'

const knowledge = shippedKnowledge()
const kase = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'pedlar-1c',
)!

const pageNamed = (id: string) => pageOf(kase.checks.get(id)!)

/** A check made on a machine with nothing wrong, as it came in but for what was done to it. */
function made(id: string, before: Change, page = pageNamed(id)) {
  const world = goodMachine(knowledge, kase)
  const standing = before(asItCame(world).standing)
  return make(knowledge, kase, { world, standing, clock: 0 }, page, 1, true)
}

const kinds = (id: string, before: Change, page?: CheckOnPage) =>
  made(id, before, page).incidents.map(({ kind }) => kind)

const nothing: Change = (standing) => standing
const atIgniter = 'primary-resistance.coil.igniter-plug'

describe('what the literal person notes of a page', () => {
  it('nothing, where it has the machine as the check needs it', () => {
    expect(made(atIgniter, nothing).incidents).toEqual([])
    expect(made('spark-on-tester.single', nothing).seen).toEqual({ kind: 'answer', id: 'spark' })
  })

  it('a reading that something left apart has spoilt', () => {
    const { seen, incidents } = made(atIgniter, add('apart', 'coil-plug'))
    expect(seen).toMatchObject({ kind: 'typed', text: expect.stringMatching(/^OL/) })
    expect(incidents).toMatchObject([{ kind: 'spoilt', check: atIgniter }])
    expect(incidents[0]!.says).toContain('coil-plug')
  })

  it('no such thing, where the page has it joined again', () => {
    const page = pageNamed(atIgniter)
    const joins = kase.machine.connectors['coil-plug']!.unplug.undo
    expect(joins).toMatchObject({ do: expect.stringContaining('join the coil plug again') })
    const told = { ...page, setups: [(joins as { do: string }).do, ...page.setups] }
    expect(kinds(atIgniter, add('apart', 'coil-plug'), told)).toEqual([])
  })

  it('a rope that cannot be pulled, since its starter is off', () => {
    expect(kinds('spark-on-tester.single', add('off', 'recoil-starter'))).toEqual(['barred'])
  })

  it('an engine that is cranked with its stop wire off, or with a plug apart for nothing', () => {
    const id = 'spark-on-tester.single'
    expect(kinds(id, add('apart', 'stop-plug'))).toEqual(['stop wire off'])
    expect(kinds(id, add('apart', 'work-lamp-plug'))).toEqual(['plug apart'])
  })
})

describe('a second ground', () => {
  const good = goodMachine(knowledge, kase)
  const effect = { series: Number.POSITIVE_INFINITY }
  const world = { ...good, faults: [{ part: 'igniter-ground', mode: 'loose', effect }] }
  const sparks = (id: string) => {
    const { standing } = asItCame(world)
    return make(knowledge, kase, { world, standing, clock: 0 }, pageNamed(id), 1, true).seen
  }

  it('brings the spark back where the first one is lost, as a good igniter on its own foot does', () => {
    expect(sparks('spark-old-plug.single')).toEqual({ kind: 'answer', id: 'none' })
    expect(sparks('igniter-ground-jumper')).toEqual({ kind: 'answer', id: 'spark' })
    expect(sparks('known-good-igniter.igniter')).toEqual({ kind: 'answer', id: 'spark' })
  })
})
