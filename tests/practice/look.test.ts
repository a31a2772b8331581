import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Case } from '../../server/knowledge/case.ts'
import { unplugId } from '../../server/knowledge/instantiate/setup-cards.ts'
import { bandOf } from '../../server/measure/decide/bands.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { shows } from '../../server/practice/seen/by-wiring.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import type { Hidden } from '../../server/practice/seen/hidden.ts'
import { look, type Seen } from '../../server/practice/seen/look.ts'
import { hiding } from '../support/hiding.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const cases = shippedCases()

const someCase = fc.constantFrom(...cases)
const someSeed = fc.integer({ min: 0, max: 1e6 })

/** As its page has it made: what it needs is there, and nothing else. */
function asAsked(hidden: Hidden, check: string, take = 1): Seen {
  const card = hidden.kase.checks.get(check)!
  const stands = new Set(card.setups.map(({ id }) => id))
  return look(hidden, card, { take, pull: 'brisk', stands })
}

const named = (complaint: string, machine: string): Case =>
  cases.find((kase) => kase.complaint.id === complaint && kase.machine.id === machine)!

describe('a hidden fault', () => {
  it('is the same for the same seed, and so is every reading', () => {
    fc.assert(
      fc.property(someCase, someSeed, (kase, seed) => {
        const [one, other] = [1, 2].map(() => drawHidden(knowledge, kase, seed))
        expect(other!.faults).toEqual(one!.faults)
        const checks = [...kase.checks.keys()]
        const readings = (hidden: Hidden) => checks.map((check) => asAsked(hidden, check))
        expect(readings(other!)).toEqual(readings(one!))
      }),
      { numRuns: 12 },
    )
  })

  it('is one that a part has, and every check of the case says something of it that can be sent', () => {
    fc.assert(
      fc.property(someCase, someSeed, (kase, seed) => {
        const hidden = drawHidden(knowledge, kase, seed)
        expect(hidden.parts.length).toBeGreaterThan(0)
        for (const card of kase.checks.values()) {
          const seen = asAsked(hidden, card.id)
          if (seen.kind === 'typed') {
            expect(parseTouches(seen.text, card.measurand!.quantity), card.id).toMatchObject({
              ok: true,
            })
          } else {
            expect(seen, card.id).toMatchObject({ kind: 'answer' })
            expect(card.outcomes).toContain(seen.kind === 'answer' && seen.id)
          }
        }
      }),
      { numRuns: 12 },
    )
  })

  it('leaves the readings of the other parts inside their limits, nine times in ten', () => {
    let [inside, all] = [0, 0]
    for (const [seed, kase] of cases.entries()) {
      const hidden = { ...drawHidden(knowledge, kase, seed), air: 20, leads: 0 }
      for (const { id, measurand } of kase.checks.values()) {
        if (measurand === undefined || shows(kase.model, id, hidden.cutSet)) continue
        const seen = asAsked(hidden, id)
        const parsed = parseTouches(seen.kind === 'typed' ? seen.text : '', measurand.quantity)
        const [touch] = parsed.ok ? parsed.touches : []
        const { limits, quantity } = measurand
        const band =
          touch?.kind === 'value' ? bandOf(touch.value, limits, quantity) : quantity.overRange
        all += 1
        inside += band === 'in range' ? 1 : 0
      }
    }
    expect(all).toBeGreaterThan(500)
    expect(inside / all).toBeGreaterThan(0.9)
  })

  it('gives a reading of its own at each touch, and of each the same', () => {
    const hidden = hiding(named('no-spark', 'pedlar-1c'), 'exciter.open', 1)
    const texts = [1, 2, 3].map((take) =>
      asAsked(hidden, 'winding-resistance.pickup.igniter-plug', take),
    )
    expect(new Set(texts.map((seen) => JSON.stringify(seen))).size).toBeGreaterThan(1)
    expect(asAsked(hidden, 'winding-resistance.exciter.magneto-plug')).toEqual({
      kind: 'typed',
      text: 'OL',
    })
  })
})

describe('what eyes and ears find', () => {
  const kase = named('no-spark', 'larkfell-2i')
  const seeds = Array.from({ length: 12 }, (_, seed) => seed)

  it('is found again each time that it is looked for', () => {
    const looked = [...kase.checks.values()].filter(({ measurand }) => measurand === undefined)
    expect(looked.length).toBeGreaterThan(20)
    for (const seed of seeds) {
      const hidden = drawHidden(knowledge, kase, seed)
      for (const { id } of looked) {
        const takes = [1, 2, 3].map((take) => asAsked(hidden, id, take))
        expect(takes, `${id} of ${seed}`).toEqual([takes[0], takes[0], takes[0]])
      }
    }
  })

  it('is one and the same plug, whichever check looks at it', () => {
    const single = named('spark-no-start', 'haulmoor-1e')
    const looks = Array.from({ length: 150 }, (_, seed) => {
      const flooded = hiding(single, 'flooding.wet', seed)
      const seen = ['plugs-look', 'plug-look-one.single'].map((id) => asAsked(flooded, id))
      return seen.map((each) => (each.kind === 'answer' ? each.id : each.kind)).join(' and ')
    })
    expect(new Set(looks)).toContain('all-wet and good')
    expect(looks).not.toContain('all-bad and good')
    expect(looks).not.toContain('one-bad and good')
    for (const fault of ['plug.fouled', 'plug.worn', 'fuel.stale']) {
      const unlike = Array.from({ length: 150 }, (_, seed) => {
        const hidden = hiding(single, fault, seed)
        const seen = ['plugs-look', 'plug-look-one.single'].map((id) => asAsked(hidden, id))
        return seen.map((each) => (each.kind === 'answer' ? each.id : each.kind)).join(' and ')
      }).filter((looked) => ['all-bad and good', 'good and bad'].includes(looked))
      // Drawn each by itself they are two plugs in one round out of six.
      expect(unlike.length, fault).toBeLessThan(15)
    }
  })

  it('is one spark, on whichever tester or plug one looks for it', () => {
    const sparks = ['spark-on-tester.left', 'swap-caps.left', 'known-good-coil.coil-left']
    const open = hiding(kase, 'exciter-start.open', 1)
    const rounds = Array.from({ length: 200 }, (_, seed): Hidden => ({ ...open, seed }))
    const alike = rounds.filter((hidden) => {
      const seen = sparks.map((check) => JSON.stringify(asAsked(hidden, check)))
      return new Set(seen).size === 1
    })
    // Rows that differ by some hundredths part where the draw falls just between them.
    expect(alike.length).toBeGreaterThan(0.97 * rounds.length)
  })
})

describe('what is left apart or off', () => {
  const hidden = hiding(named('no-spark', 'pedlar-1c'), 'plug.fouled', 1)
  const withAlso = (check: string, ...also: string[]) => {
    const card = hidden.kase.checks.get(check)!
    const stands = new Set([...card.setups.map(({ id }) => id), ...also])
    return look(hidden, card, { take: 1, pull: 'brisk', stands })
  }

  it('opens the way of a reading through the harness', () => {
    const check = 'winding-resistance.exciter.igniter-plug'
    expect(withAlso(check)).not.toEqual({ kind: 'typed', text: 'OL' })
    expect(withAlso(check, unplugId('magneto-plug'))).toEqual({ kind: 'typed', text: 'OL' })
  })

  it('keeps a rope that is off from being pulled', () => {
    const pulled = [...hidden.kase.checks.values()].find(({ forbids }) =>
      forbids.some(({ id }) => id === 'access recoil-starter'),
    )!
    expect(withAlso(pulled.id, 'access recoil-starter')).toEqual({
      kind: 'barred',
      by: ['access recoil-starter'],
    })
  })

  it('kills the spark of a machine that would have one', () => {
    const check = [...hidden.kase.checks.keys()].find((id) => id.startsWith('spark-on-tester'))!
    expect(withAlso(check, unplugId('coil-plug'))).toEqual({ kind: 'answer', id: 'none' })
  })

  it('changes nothing of a spark that does not pass through it', () => {
    const check = [...hidden.kase.checks.keys()].find((id) => id.startsWith('spark-on-tester'))!
    expect(withAlso(check, unplugId('work-lamp-plug'))).toEqual(withAlso(check))
  })

  it('leaves what an owner remembers as it is', () => {
    const asked = [...hidden.kase.checks.values()].find((card) => card.asked)!
    expect(withAlso(asked.id, unplugId('coil-plug'))).toEqual(withAlso(asked.id))
  })
})

describe('a starter whose key plug is apart', () => {
  const hidden = hiding(named('does-not-turn', 'brackenway-1b'), 'wires-key.open', 1)
  const apart = (of: Hidden, check: string) => {
    const card = of.kase.checks.get(check)!
    const stands = new Set([...card.setups.map(({ id }) => id), unplugId('key-plug')])
    return look(of, card, { take: 1, pull: 'brisk', stands })
  }

  it('turns only where its relay is fed past the key', () => {
    expect(apart(hidden, 'relay-fed')).toEqual({ kind: 'answer', id: 'turns' })
    expect(apart(hidden, 'relay-click.starter-relay')).toEqual({ kind: 'answer', id: 'silent' })
    expect(apart(hidden, 'start-listen')).toEqual({ kind: 'answer', id: 'silent' })
  })

  it('turns no engine, so that nothing is seen of one that it would turn', () => {
    const barred = { kind: 'barred', by: [unplugId('key-plug')] }
    const cold = hiding(named('hard-start-cold', 'brackenway-1b'), 'starter-lead.loose', 1)
    const checks = ['cranking-speed', 'spark-strength.single', 'timing-mark.flywheel-key']
    expect(checks.map((check) => apart(cold, check))).toEqual([barred, barred, barred])
  })
})
