import { describe, expect, it } from 'vitest'
import { latest, latestOf } from '../../../server/jobs/measuring/latest.ts'

/** Works out a box for each name, and says for which it had to. */
function watched(most: number) {
  const keep = latest<{ readonly of: string }>(most)
  const worked: string[] = []
  const ask = (name: string) =>
    keep(name, () => {
      worked.push(name)
      return { of: name }
    })
  return { ask, worked }
}

describe('the latest results', () => {
  it('are worked out once, and are the same object from then on', () => {
    const { ask, worked } = watched(2)
    expect(ask('a')).toEqual({ of: 'a' })
    expect(ask('a')).toBe(ask('a'))
    expect(worked).toEqual(['a'])
  })

  it('are no more than asked for: what was not asked for longest is worked out again', () => {
    const { ask, worked } = watched(2)
    for (const name of ['a', 'b', 'a', 'c', 'a', 'b']) ask(name)
    expect(worked).toEqual(['a', 'b', 'c', 'b'])
  })

  it('of one thing are not those of another, nor push them out', () => {
    const keep = latestOf<object, { readonly of: number }>(1)
    const [one, other] = [{}, {}]
    const first = keep(one, 'name', () => ({ of: 1 }))
    expect(keep(other, 'name', () => ({ of: 2 }))).toEqual({ of: 2 })
    expect(keep(one, 'name', () => ({ of: 3 }))).toBe(first)
  })
})
