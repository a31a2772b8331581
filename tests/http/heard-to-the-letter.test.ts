import { describe, expect, it } from 'vitest'
import { allCases, appForAll } from '../support/app.ts'
import { Owner } from '../support/hearing.ts'
import { caseOf } from '../support/on-phone.ts'
import { phoneCall } from '../support/phone-call.ts'

/** Seeds of a longer look, one call of every case each: `CALLS=6 npx vitest run ...`. */
const calls = Number(process.env.CALLS ?? 0)

describe('an owner who does to the letter what is said by phone', () => {
  const { http } = appForAll()

  it('is never asked for what is not there, nor starts a machine that is open or free', async () => {
    const seeds = calls > 0 ? Array.from({ length: calls }, (_, i) => i + 1) : [1]
    const cases = allCases().filter((_, i) => calls > 0 || i % 4 === 0)
    const amiss: string[] = []
    for (const kase of cases) {
      for (const seed of seeds) amiss.push(...(await phoneCall(http(), kase, seed)))
    }
    expect(amiss).toEqual([])
  }, 900_000)

  it('would see a start with nothing that holds it, an open tank, and a plug under a rag', () => {
    const owner = new Owner(caseOf('pedlar-1c', 'no-spark'))
    const hear = (says: string) => owner.hear({ label: 'do', says }, 'here')
    hear('See that it cannot move off: firm and level on its frame, its wheel blocked.')
    hear('Keep clear, and pull the rope.')
    expect(owner.amiss).toEqual([])
    hear('Pull each cap off, by the cap, and screw every spark plug out.')
    hear('Lay a dry rag over the holes.')
    hear('Screw each plug in by hand until it sits, then tighten it with the spanner.')
    hear('With nobody in front of it, undo what held it in place, such as a brake or a block.')
    hear('In the open, away from any flame, take the tank cap off.')
    hear('Keep clear, and pull the rope.')
    owner.expect({ capsOff: false }, 'here')
    owner.hear({ label: 'do', says: 'Keep clear, and pull the rope.' }, 'here', true)
    owner.brokenOff()
    owner.hear({ label: 'found', says: 'It is most likely the stop switch.' }, 'here')
    expect(owner.amiss.map((each) => each.replace(/.*” /, ''))).toEqual([
      'with a rag over the holes',
      'and nothing holds it',
      'and the tank is open',
      'here: capsOff is true',
      'and nothing holds it',
      'and the tank is open',
      'while it may run',
    ])
  })
})
