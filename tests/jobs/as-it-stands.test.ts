import { describe, expect, it } from 'vitest'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { asItStands, wayTo } from '../../server/jobs/standing/as-it-stands.ts'
import type { CheckCard, SetupCard } from '../../server/knowledge/case.ts'

const setup = (id: string, more: Partial<SetupCard> = {}): SetupCard => ({
  id,
  do: `Take off the ${id}.`,
  minutes: 2,
  undo: { do: `Put the ${id} back.`, minutes: 1 },
  ...more,
})
const hood = setup('hood')
const plug = setup('plug')
const coil = setup('coil')
const stopWire = setup('stop wire', { once: true })
const { undo: _, ...heat } = setup('heat', { once: true })
const { undo: __, ...outside } = setup('outside')

const check = (id: string, setups: readonly SetupCard[], more: Partial<CheckCard> = {}) =>
  ({ id, title: id, setups, ...more }) as CheckCard
const checks = new Map(
  [
    check('winding', [hood, plug]),
    check('coil', [hood, coil]),
    check('look', []),
    check('stop', [hood, stopWire]),
    check('hot', [outside, heat]),
    check('owner', [], { asked: true }),
  ].map((card) => [card.id, card]),
)

const manner = { warmth: { kind: 'as the air' } } as const
const made = (name: string, kind: 'reading' | 'take' | 'correction' = 'reading'): JobEvent => ({
  kind,
  check: name,
  typed: '',
  touches: [{ kind: 'could-not-tell' }],
  manner,
})
const skip = (name: string): JobEvent => ({ kind: 'skipped', check: name, reason: 'seized' })

const after = (...happened: JobEvent[]) => {
  const events = happened.map((event) => ({ event, at: new Date(0) }))
  return asItStands({ checks }, { id: 1, version: events.length, events })
}
const off = (...happened: JobEvent[]) => after(...happened).setups.map(({ id }) => id)
const way = (to: string, ...happened: JobEvent[]) => {
  const { putBack, make, keep, begun } = wayTo(after(...happened), checks.get(to)!)
  const names = (setups: readonly { id: string }[]) => setups.map(({ id }) => id).join(', ')
  return { putBack: names(putBack), make: names(make), keep: names(keep), begun: names(begun) }
}

describe('the machine as it stands', () => {
  it('came in whole', () => expect(off()).toEqual([]))

  it('is as the last check left it, whatever came back', () => {
    expect(off(made('winding'))).toEqual(['hood', 'plug'])
    expect(off(made('winding'), made('coil'))).toEqual(['hood', 'coil'])
    expect(off(made('winding'), made('look'))).toEqual([])
  })

  it('is as a check left it that was made once more', () => {
    expect(off(made('winding'), made('coil'), made('winding', 'take'))).toEqual(['hood', 'plug'])
  })

  it('has neither apart what a check puts back itself, nor warm what fades', () => {
    expect(off(made('stop'))).toEqual(['hood'])
    expect(off(made('hot'))).toEqual(['outside'])
  })

  it.each<[string, JobEvent]>([
    ['correcting', made('coil', 'correction')],
    ['withdrawing', { kind: 'withdrawn', check: 'winding' }],
    ['accepting', { kind: 'accepted', check: 'winding' }],
    ['taking another meter', { kind: 'meter', meter: { kind: 'class', id: 'x' }, zero: null }],
    ['asking the owner', made('owner')],
    ['writing down a repair', { kind: 'repaired', parts: ['coil'] }],
    ['a check that the knowledge lost', made('gone')],
    ['skipping a check', skip('coil')],
  ])('is not touched by %s', (_, event) => {
    expect(off(made('coil'), made('winding'), event)).toEqual(['hood', 'plug'])
  })

  it.each([true, false])('is together again once a repair was tried, gone: %s', (gone) => {
    const repaired: JobEvent = { kind: 'repaired', parts: ['coil'] }
    const proved: JobEvent = { kind: 'proved', gone, reopened: ['winding'] }
    expect(after(made('winding'), repaired, skip('coil'), proved)).toEqual({
      setups: [],
      begun: [],
    })
  })
})

describe('the way to a check', () => {
  it('takes off what it needs', () => {
    expect(way('winding')).toEqual({ putBack: '', make: 'hood, plug', keep: '', begun: '' })
  })

  it('puts back what it does not need, the last first, and takes off again what was put back', () => {
    expect(way('look', made('winding')).putBack).toBe('plug, hood')
    expect(way('winding', made('winding'), made('look')).make).toBe('hood, plug')
  })

  it('keeps what it needs', () => {
    expect(way('coil', made('winding'))).toEqual({
      putBack: 'plug',
      make: 'coil',
      keep: 'hood',
      begun: '',
    })
    expect(way('winding', made('winding'))).toMatchObject({ putBack: '', make: '' })
  })

  it('makes anew what the same check put back itself, or what faded', () => {
    expect(way('stop', made('stop')).make).toBe('stop wire')
    expect(way('hot', made('hot')).make).toBe('heat')
  })

  it('has nothing put back that leaves nothing behind', () => {
    expect(way('look', made('hot')).putBack).toBe('')
  })

  it('leaves everything as it is for a question', () => {
    expect(way('owner', made('winding'), skip('coil'))).toEqual({
      putBack: '',
      make: '',
      keep: '',
      begun: '',
    })
  })

  it('thinks of what may have been taken off, or put back, for a check that was skipped', () => {
    expect(way('look', made('winding'), skip('coil'))).toMatchObject({
      putBack: 'plug, hood',
      begun: 'coil',
    })
    expect(way('coil', skip('coil'))).toMatchObject({ make: 'hood, coil', begun: '' })
    expect(way('winding', made('winding'), skip('coil'))).toEqual({
      putBack: '',
      make: 'plug',
      keep: 'hood',
      begun: 'coil',
    })
    expect(way('look', skip('owner')).begun).toBe('')
  })
})
