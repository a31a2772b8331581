import { expect, it } from 'vitest'
import { kitCard } from '../../server/knowledge/instantiate/setup-cards.ts'
import { backViews } from '../../server/practice/page/between.ts'
import { atTheBench } from '../../server/practice/page/words.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

it('no check of any machine speaks of a field that a job has and the bench has not', () => {
  const texts = shippedCases().flatMap(({ checks }) =>
    [...checks.values()].flatMap((card) => [...card.do, card.meter ?? '']),
  )
  const ofAJob = /taken off for you|Meter and leads/i
  expect(texts.filter((text) => ofAJob.test(text)).length).toBeGreaterThan(100)
  expect(texts.map(atTheBench).filter((text) => ofAJob.test(text))).toEqual([])
})

it('nothing is said to be put back that leaves nothing to put back', () => {
  const [kase] = shippedCases()
  const { setups } = shippedKnowledge()
  const all = Object.keys(setups.setups).map((id) => kitCard(id, setups, kase!.machine))
  const nothing = all.filter(({ undo }) => undo === undefined)
  expect(nothing.length).toBeGreaterThan(0)
  expect(backViews(kase!, { back: nothing, minutes: 0, waited: 0 })).toEqual([])
  const [left] = all.filter(({ undo }) => undo !== undefined)
  const both = backViews(kase!, { back: [...nothing, left!], minutes: 1, waited: 0 })
  expect(both.map(({ says }) => says.includes(';'))).toEqual([false])
})
