import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import { look } from '../../server/practice/seen/look.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const module = caseFor(knowledge, 'clipwell-1m', 'no-spark')
const points = caseFor(knowledge, 'fernslade-1p', 'no-spark')
const weak = caseFor(knowledge, 'fernslade-1p', 'hard-start-cold')

/** What a gauge shows on machines that hide this fault, or any other, one a seed. */
function shownOn(
  kase: typeof module,
  check: string,
  hides: (faults: readonly string[]) => boolean,
) {
  const card = kase.checks.get(check)!
  const stands = new Set(card.setups.map(({ id }) => id))
  return Array.from({ length: 400 }, (_, seed) => drawHidden(knowledge, kase, seed))
    .filter(({ faults }) => hides(faults))
    .map((hidden) => look(hidden, card, { take: 1, pull: 'brisk', stands }))
    .map((seen) => Number(seen.kind === 'typed' ? seen.text : Number.NaN))
}

const shareOf = (values: readonly number[], is: (value: number) => boolean) =>
  values.filter(is).length / values.length

describe('a feeler gauge on the practice bench', () => {
  const tooFar = (faults: readonly string[]) => faults.includes('module-seat.too-far')
  const gap = 'module-air-gap.module-seat'

  it('shows blades that there are', () => {
    const all = shownOn(module, gap, () => true)
    expect(all.length).toBe(400)
    for (const blade of all) {
      const steps = blade / (blade < 0.1 ? 0.01 : 0.05)
      expect(steps).toBeCloseTo(Math.round(steps), 6)
    }
  })

  it('goes in as the sheet says on most good ones, and beyond that where the fault is', () => {
    const [good, bad] = [shownOn(module, gap, (f) => !tooFar(f)), shownOn(module, gap, tooFar)]
    expect(bad.length).toBeGreaterThan(5)
    expect(shareOf(good, (blade) => blade >= 0.25 && blade < 0.4)).toBeGreaterThan(0.8)
    expect(shareOf(bad, (blade) => blade >= 0.4 && blade <= 2)).toBeGreaterThan(0.8)
  })

  it('goes in nowhere between points that no longer open', () => {
    const shut = shownOn(points, 'points-gap.points', (f) => f.includes('points.closed-up'))
    expect(shut.length).toBeGreaterThan(5)
    expect(shareOf(shut, (blade) => blade < 0.05)).toBeGreaterThan(0.8)
  })

  it('gives way to a dial that reads between its marks', () => {
    const read = shownOn(weak, 'points-opening.points.magneto-plug', () => true)
    expect(shareOf(read, (mm) => mm >= 1.7 && mm <= 2.7)).toBeGreaterThan(0.3)
    expect(new Set(read).size).toBeGreaterThan(20)
  })
})
