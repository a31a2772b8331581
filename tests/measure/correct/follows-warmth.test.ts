import { expect, it } from 'vitest'
import { shippedCases } from '../../support/knowledge.ts'

const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
const limitsIn = (does: readonly string[]) => /Limits: (.*?)(?:[.,] |\.$)/.exec(does.join(' '))?.[1]

it('says in the steps at which temperature the limits of a winding hold, and only there', () => {
  const said = cards.flatMap((card) => {
    const limits = limitsIn(card.do)
    return limits === undefined || card.measurand === undefined ? [] : [{ ...card, limits }]
  })
  const copper = said.filter(
    ({ measurand }) =>
      measurand?.quantity.corrections.includes('copper') &&
      measurand.material !== 'not copper' &&
      measurand.warmedTo === undefined,
  )
  expect(copper.length).toBeGreaterThan(20)
  expect(
    copper.filter(({ limits }) => !/at -?\d+\u00a0°C/.test(limits)).map(({ id }) => id),
  ).toEqual([])
  const others = said.filter((card) => !copper.includes(card))
  expect(others.length).toBeGreaterThan(20)
  expect(others.filter(({ limits }) => /°C/.test(limits)).map(({ id }) => id)).toEqual([])
})
