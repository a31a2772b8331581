import { describe, expect, it } from 'vitest'
import { plain } from '../support/plain.ts'
import { type Readings, smallJobPage } from '../support/small-job.ts'

const verdictAfter = (readings: Readings) => plain(smallJobPage(readings).verdict)

describe('a named part', () => {
  const page = () => smallJobPage({ spark: 'none', 'exciter.resistance': 'OL OL OL' })

  it('stands in one sentence, with its share', () => {
    expect(plain(page().verdict)).toMatchObject({
      kind: 'named',
      stamp: 'part named, 98 %',
      says: 'The fault is in the start exciter: it is open somewhere in the winding.',
    })
  })

  it('has its evidence as sentences that say how much they weigh', () => {
    expect(plain(page().verdict!.evidence)).toEqual([
      'Start exciter read OL at the stator plug, pins 1 and 2: open, >99 %; a good one reads 310 Ω to 420 Ω at 20 °C. That speaks strongly for it (51 to 1).',
    ])
  })

  it('says what to do next, from the place of the part to the complaint itself', () => {
    expect(page().verdict!.next.map(({ says }) => says)).toEqual([
      'Where: behind the flywheel.',
      'Start exciter: replace the exciter.',
    ])
    expect(page().verdict!.prove).toEqual([
      'Measure the new exciter.',
      'Then the complaint itself: start it three times.',
    ])
    expect(page().verdict!.cautions.panels).toEqual([
      { signal: 'warning', commands: ['Keep clear.'] },
    ])
  })

  it('says what it could still be', () => {
    expect(plain(page().verdict!.couldBe)).toEqual([
      'The igniter, 1 %.',
      'The ignition coil, <1 %.',
    ])
  })

  it('ends the asking, unless somebody wants another check', () => {
    expect(page()).not.toHaveProperty('check')
    expect(page().focus).toBe('verdict')
    const more = smallJobPage(
      { spark: 'none', 'exciter.resistance': 'OL OL OL' },
      { check: 'coil.resistance' },
    )
    expect(more.check!.id).toBe('coil.resistance')
    expect(more.verdict!.kind).toBe('named')
  })

  it('has every way of failing in it that the readings leave open', () => {
    const readings = {
      'exciter.resistance': '?',
      'coil.resistance': 7000,
      'igniter.swap': 'as-before',
    }
    expect(verdictAfter({ ...readings, spark: 'none' })).toMatchObject({
      kind: 'named',
      says: 'The fault is in the start exciter: it is open somewhere in the winding (60 %), or it has shorted turns (40 %).',
    })
  })
})

describe('suspects that cannot be told apart', () => {
  const verdict = () =>
    verdictAfter({ 'exciter.resistance': 365, 'coil.resistance': 7654, spark: 'none' })!

  it('are named together, with the check that would split them', () => {
    expect(verdict()).toMatchObject({
      kind: 'cannotSeparate',
      says: 'These cannot be told apart with the tools at hand: the igniter (71 %) or the start exciter (28 %).',
    })
    expect(verdict().next[0]).toEqual({
      says: 'This would split them: “A known good igniter”. Needs: known good igniter.',
      way: { href: '/jobs/12?check=igniter.swap', text: 'Make this check' },
    })
  })

  it('come with a part to begin with', () => {
    expect(verdict().next[1]!.says).toBe(
      'If a part must be chosen now, begin with the igniter: replace the igniter.',
    )
  })
})

describe('readings that disagree', () => {
  it('are to be repeated, the worst first', () => {
    const verdict = verdictAfter({
      'exciter.resistance': 'OL OL OL',
      'coil.resistance': 'OL OL OL',
      spark: 'good',
    })!
    expect(verdict.kind).toBe('contradiction')
    expect(verdict.says).toMatch(
      /^The readings do not fit any single explanation: look at “Resistance of the .+” again first\.$/,
    )
    expect(verdict.evidence[0]).toMatch(
      /read OL.+ That does not fit the rest: what one would expect is (about|over) \d+ times likelier\.$/,
    )
    expect(verdict.next[0]!.way!.href).toMatch(/^\/jobs\/12\?correct=(exciter|coil)\.resistance$/)
  })
})

describe('a cause outside the tree', () => {
  it('is said with what was cleared and where to go on', () => {
    const verdict = verdictAfter({
      'exciter.resistance': 365,
      'coil.resistance': 7654,
      spark: 'good',
    })!
    expect(verdict).toMatchObject({
      kind: 'outsideThisTree',
      says: 'None of the causes listed here explains the complaint any more.',
      next: [
        {
          says: 'Look at “Spark on the tester” again: was it heard and set down right?',
          way: { href: '/jobs/12?correct=spark', text: 'Put it right' },
        },
        { says: 'Look at the fuel and at the compression.' },
      ],
    })
    expect(verdict.evidence).toContain(
      'Spark on the tester: good spark. That cleared: start exciter is open somewhere in the winding; igniter.',
    )
  })
})
