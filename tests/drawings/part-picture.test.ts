import { describe, expect, it } from 'vitest'
import { partPicture, partPictures } from '../../server/drawings/parts/pictures.ts'
import { pictureNames } from '../../server/knowledge/schema/glossary.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

/** Every coordinate that a path names outright, without those that go on from where it stands. */
const placesIn = (svg: string): number[] =>
  [...svg.matchAll(/[MLHV](-?[\d.]+)(?: (-?[\d.]+))?/g)].flatMap(([, x, y]) =>
    [x, y].filter((each) => each !== undefined).map(Number),
  )

describe('the pictures of parts', () => {
  it('are those that the glossary may name, and it shows each of them', () => {
    expect([...partPictures].sort()).toEqual([...pictureNames].sort())
    const shown = Object.values(shippedKnowledge().glossary.words).map(({ picture }) => picture)
    for (const name of partPictures) expect(shown, name).toContain(name)
  })

  it.each(partPictures)('say what they show to those who hear the page: %s', (name) => {
    const svg = partPicture(name)
    expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*><title>[A-Z][^<]{20,}<\/title>/)
  })

  it.each(partPictures)('are drawn in the colour of the text, inside their field: %s', (name) => {
    const svg = partPicture(name)
    expect(svg).not.toMatch(/NaN|undefined|#[0-9a-f]{6}|style=/)
    const places = placesIn(svg)
    expect(places.length).toBeGreaterThan(6)
    expect(Math.min(...places)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...places)).toBeLessThanOrEqual(120)
  })

  it('are all different', () => {
    expect(new Set(partPictures.map(partPicture)).size).toBe(partPictures.length)
  })
})
