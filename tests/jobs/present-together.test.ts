import { describe, expect, it } from 'vitest'
import { presentTogether } from '../../server/jobs/readings/together.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { plain } from '../support/plain.ts'

/** What readings on the twin of the demo say together. */
function together(readings: Readonly<Record<string, string>>, air = 20): string[] {
  const knowledge = shippedKnowledge()
  const kase = caseFor(knowledge, 'larkfell-2i', 'no-spark')
  const opened: JobEvent = {
    kind: 'opened',
    machine: kase.machine.id,
    complaint: kase.complaint.id,
    conditions: { where: 'bench', air, engine: 'cold', tools: [], meter: 'shop' },
    note: '',
  }
  const taken = Object.entries(readings).map(([check, typed]): JobEvent => {
    const parsed = parseTouches(typed, kase.checks.get(check)!.measurand!.quantity)
    if (!parsed.ok) throw new Error(parsed.problem)
    const manner = { warmth: { kind: 'as the air' } } as const
    return { kind: 'reading', check, typed, touches: parsed.touches, manner }
  })
  const events = [opened, ...taken].map((event) => ({ event, at: new Date(0) }))
  const job = { id: 1, version: events.length, events }
  return plain(presentTogether(standingOf(knowledge, { job, folded: fold(events), kase })))
}

const cap = 'through-cap-resistance.coil-left'
const secondary = 'secondary-resistance.coil-left'
const primary = 'primary-resistance.coil-left.coil-plug-left'
const atIgniter = 'winding-resistance.pickup-left.igniter-plug'
const atPickup = 'winding-resistance.pickup-left.pickup-plug'
const twin = 'winding-resistance.pickup-right.igniter-plug'
const toGround = 'winding-isolation.pickup-left.igniter-plug'

describe('through the cap, minus at the tower', () => {
  it('leaves lead and cap, in whatever order they were read, with the chance that they are good', () => {
    const [says, ...more] = together({ [cap]: '14.2k', [secondary]: '9.1k' })
    expect(says).toMatch(
      /^14\.2 kΩ at .+, minus 9\.1 kΩ at .+, leaves 5\.1 kΩ ± .+ for the left plug lead and the left plug cap\. Good ones have 4\.2 kΩ to 5\.805 kΩ: >99 % within that\.$/,
    )
    expect(more).toEqual([])
    expect(together({ [secondary]: '9.1k', [cap]: '14.2k' })).toEqual([says])
  })

  it('says so where they have too much', () => {
    const [says] = together({ [cap]: '21k', [secondary]: '9.1k' })
    expect(says).toContain('leaves 11.9 kΩ')
    expect(says).toContain('<1 % within that')
  })

  it('is not taken against the primary, which is another winding', () => {
    expect(together({ [cap]: '14.2k', [primary]: '0.45' })).toEqual([])
  })

  it('says nothing of an OL', () => {
    expect(together({ [cap]: 'OL', [secondary]: '9.1k' })).toEqual([])
  })
})

describe('through the wires, minus at the part', () => {
  it('leaves the wires, cold or not', () => {
    for (const air of [20, -25]) {
      const [says] = together({ [atIgniter]: '226.4', [atPickup]: '225' }, air)
      expect(says).toMatch(/leaves 1\.4 Ω ± .+ for the left pickup wiring and the pickup plug\./)
    }
  })
})

describe('a winding beside its twin', () => {
  it('reads alike', () => {
    expect(together({ [atIgniter]: '225', [twin]: '220.7' })).toEqual([
      expect.stringMatching(
        /^The left timing pickup and the right timing pickup read alike: 1\.02 to 1 \(± 0\.0\d+\)\.$/,
      ),
    ])
  })

  it('or reads more than it, which names the one', () => {
    const [says] = together({ [atIgniter]: '195', [twin]: '250' })
    expect(says).toMatch(
      /^The right timing pickup reads more than the left timing pickup, its twin: 1\.28 to 1/,
    )
  })

  it('is not another winding, nor the same one read elsewhere', () => {
    const exciter = 'winding-resistance.exciter-start.igniter-plug'
    expect(together({ [atIgniter]: '225', [exciter]: '365' })).toEqual([])
    expect(together({ [atPickup]: '225', [twin]: '225' })).toEqual([])
  })
})

describe('line to line, and line to ground', () => {
  it('bound where a winding leaks, and through how much', () => {
    const [near] = together({ [atIgniter]: '225', [toGround]: '90' })
    expect(near).toContain('within the first 40 % of the winding, from that line on')
    expect(near).toContain('with 90 Ω of its own at most')
    const [far] = together({ [atIgniter]: '225', [toGround]: '1225' })
    expect(far).toContain('may lie anywhere in the winding, with 1 kΩ to 1.225 kΩ of its own')
  })
})
