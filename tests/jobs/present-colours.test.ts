import { expect, it } from 'vitest'
import { stylesheet } from '../../server/web/stylesheet.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

it('fills each wire in the style sheet with the swatch of the colour table, and no other', () => {
  const css = stylesheet()
  const styled = [...css.matchAll(/\.wire-([a-z]{2}) \{\s*fill: (#[0-9a-f]{3,6});\s*\}/g)]
  const { colours } = shippedKnowledge().colours
  const wanted = Object.entries(colours).map(([code, { swatch }]) => [code, swatch])
  expect(wanted.length).toBeGreaterThan(5)
  expect(styled.map(([, code, fill]) => [code!.toUpperCase(), fill]).sort()).toEqual(wanted.sort())
})
