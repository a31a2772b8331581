import { describe, expect, it } from 'vitest'
import { checkLines } from '../../../server/jobs/phone/check-lines.ts'
import { waysHome } from '../../../server/jobs/phone/home.ts'
import { saying } from '../../../server/jobs/phone/saying.ts'
import type { Line } from '../../../server/jobs/phone/view.ts'
import { shippedCases, shippedKnowledge } from '../../support/knowledge.ts'
import { shippedJob } from '../../support/shipped-job.ts'

const signals = ['danger', 'warning', 'caution', 'notice']

describe('what is said to an owner about a check', () => {
  const kits = Object.keys(shippedKnowledge().owner.kit)
  it.each(
    shippedCases().map((kase) => [`${kase.complaint.title}, ${kase.machine.name}`, kase] as const),
  )('is whole sentences, cautions first: %s', (_, kase) => {
    const job = shippedJob(
      {
        machine: kase.machine.id,
        complaint: kase.complaint.id,
        where: 'trailside',
        who: 'owner',
        kit: kits,
      },
      {},
    )
    const fit = [...kase.checks.values()].filter(({ owner }) => owner.fit)
    expect(fit.length).toBeGreaterThan(0)
    const wrong = fit.flatMap((card) => {
      const lines = checkLines(job, card)
      const turning = card.cautions.filter(({ ofTurning }) => ofTurning).map(({ phone }) => phone)
      const ofTurning = ({ says }: Line) => turning.some((phone) => phone.includes(says))
      const from = (some: (line: Line) => boolean) => lines.slice(lines.findIndex(some))
      const isCaution = ({ label }: Line) => signals.includes(label)
      // Whatever is done or made ready has its cautions before it; those of an engine that turns may come after that.
      const late = [
        ...from((line) => !isCaution(line)).filter((line) => isCaution(line) && !ofTurning(line)),
        ...from(({ label }) => ['do', 'ask', 'name it'].includes(label)).filter(isCaution),
      ]
      const odd = lines.filter(({ says }) => !/^[A-Z{"“].*[.?!:]$/s.test(says) || /[{}]/.test(says))
      return [...late, ...odd].map(({ says }) => `${card.id}: ${says}`)
    })
    expect(wrong).toEqual([])
  })

  it('ends in a question, or in what they are to read out, for every check that is fit', () => {
    const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
    const silent = cards.filter(
      (card) => card.owner.fit && !/\?$|\b(read|tell|show|say)\b/i.test(card.asks),
    )
    expect([...new Set(silent.map(({ id }) => id.split('.')[0]))]).toEqual([])
  })
})

describe('one sentence at a time', () => {
  const lines = ['One.', 'Two.', 'Three.'].map((says) => ({ says, label: 'do' }))
  const at = (asked: number) => saying(lines, asked, (number) => `#${number}`)

  it('has a way on but at the last, and a way back but at the first', () => {
    expect(at(1)).toMatchObject({ at: 0, place: '1 of 3', next: '#2' })
    expect(at(1)).not.toHaveProperty('back')
    expect(at(3)).toMatchObject({ at: 2, back: '#2' })
    expect(at(3)).not.toHaveProperty('next')
  })

  it.each([
    [0, 0],
    [-4, 0],
    [99, 2],
  ])('stands at the nearest sentence for %d', (asked, index) => {
    expect(at(asked).at).toBe(index)
  })
})

describe('ways home', () => {
  it('put first what gets around the likeliest', () => {
    const open = { machine: 'pedlar-1c', complaint: 'no-spark', who: 'owner', kit: [] } as const
    const ways = (readings: Record<string, string>) =>
      waysHome(shippedJob(open, readings)).map(([id]) => id)
    const before = ways({})
    const look = 'stop-switch-look.stop-switch'
    const after = ways({ [look]: 'not-home' })
    expect([...after].sort()).toEqual([...before].sort())
    expect(after[0]).toBe('controls-home')
  })
})
